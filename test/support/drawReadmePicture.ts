// Takes the picture in README.md from the real program: node main/setup/run.mjs test/support/drawReadmePicture.ts, on a
// screen or under xvfb-run, after npm run build.

import { rm } from 'node:fs/promises';
import { launchProgram, makeDataFolder } from './launchProgram.ts';
import { acceptOffer, openSample } from './walkSteps.ts';

const FILE = 'assets/pictures/workspace.png';

const dataFolder = await makeDataFolder();
const program = await launchProgram({ dataFolder });
try {
  await program.settled();
  await openSample(program, 'van-before');
  await acceptOffer(program);
  await program.settled();
  await program.page.screenshot({ path: FILE });
} finally {
  await program.close();
  await rm(dataFolder, { recursive: true, force: true });
}
