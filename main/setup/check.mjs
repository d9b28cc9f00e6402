// npm run check: types, format and lint, promises, and the tests of the walls. What npm test begins with, in seconds.

import { CHECKS, runCheck } from './checks.mjs';
import { prepare } from './prepare.mjs';
import { runCommand } from './problem.mjs';
import { runTests } from './vitestRun.mjs';

await runCommand(async () => {
  await prepare();
  let failed = 0;
  for (const check of CHECKS) if (!(await runCheck(check))) failed += 1;
  const walls = await runTests({ projects: ['unit'], given: ['test/architecture'], hiddenScreen: false });
  return failed === 0 && walls.status === 0 ? 0 : 1;
});
