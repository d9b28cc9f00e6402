// npm run dist: packs the program for this system (--linux, --win, --mac for others) into release/.
// npm run dist -- --dir-for-test: packs plain folders into .cache/packed for the end-to-end test; these are not for release.

import { packForRelease, packForTest, releaseFolder } from './pack.mjs';
import { prepareWindow } from './prepare.mjs';
import { runCommand } from './problem.mjs';

await runCommand(async () => {
  const given = process.argv.slice(2);
  const runtime = await prepareWindow({});
  if (given.includes('--dir-for-test')) {
    const { shipping, inspectable } = await packForTest(runtime);
    process.stdout.write(`${JSON.stringify({ shipping, inspectable, runtime: runtime.version })}\n`);
    return;
  }
  await packForRelease(runtime, given);
  process.stdout.write(`The installers are in ${releaseFolder()}\n`);
});
