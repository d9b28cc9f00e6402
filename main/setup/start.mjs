// npm start: prepares, builds and opens the program. What stands behind -- goes to it: captures to open.
// npm start -- --snapshot FILE.png [--size 1280x800] [capture]: opens it on a hidden screen, waits until the window has
// settled, and saves a picture of it. Snapshots use a throw-away data folder and never touch a person's vehicles.

import { build } from './build.mjs';
import { electronArguments, hasScreen, personsFolder, runShown } from './launch.mjs';
import { prepareWindow } from './prepare.mjs';
import { runCommand, SetupProblem } from './problem.mjs';
import { takeSnapshot } from './snapshot.mjs';
import { readStartArguments } from './startArguments.mjs';

await runCommand(async () => {
  const wish = readStartArguments(process.argv.slice(2), personsFolder());
  if (wish.snapshot === null && !hasScreen()) {
    throw new SetupProblem({
      what: 'There is no screen here on which the window could open.',
      where: 'neither DISPLAY nor WAYLAND_DISPLAY is set',
      doNext: 'start it from a desktop session, or take a picture of the window: npm start -- --snapshot window.png',
    });
  }
  const runtime = await prepareWindow({ hiddenScreen: wish.snapshot !== null });
  const { missing } = await build();
  if (missing.length > 0) throw new Error(`these parts of the program are missing: ${missing.join(', ')}`);
  if (wish.snapshot === null) return runShown(runtime.executable, electronArguments(wish.given));
  const place = await takeSnapshot(runtime.executable, wish.snapshot, wish.size, electronArguments(wish.given));
  process.stdout.write(`The picture of the window is in ${place}\n`);
  return 0;
});
