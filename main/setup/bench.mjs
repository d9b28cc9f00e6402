// npm run bench [-- NAME …]: measures, side by side in one run, and prints ratios. Each file test/bench/NAME.bench.ts is one
// measurement; NAME.window.bench.ts is one in the real program, which gets a runtime and, where there is none, a screen.

import { readdir } from 'node:fs/promises';
import { build } from './build.mjs';
import { hasScreen, onHiddenScreen } from './launch.mjs';
import { inRoot } from './places.mjs';
import { prepare, prepareWindow } from './prepare.mjs';
import { runCommand, SetupProblem } from './problem.mjs';
import { runTypeScript } from './run.mjs';

await runCommand(async () => {
  const names = process.argv.slice(2);
  const files = await benchesNamed(names);
  if (files.some(isWindowBench)) await prepareWindow({ hiddenScreen: true });
  else await prepare();
  await build();
  for (const file of files) {
    process.stdout.write(`\n${file}\n`);
    const hide = isWindowBench(file) && !hasScreen();
    const status = await runTypeScript(`test/bench/${file}`, [], {
      nodeFlags: ['--expose-gc'],
      ...(hide ? { under: onHiddenScreen } : {}),
    });
    if (status !== 0) return status;
  }
  return 0;
});

/** @param {string} file */
function isWindowBench(file) {
  return file.endsWith('.window.bench.ts');
}

/** @param {readonly string[]} names */
async function benchesNamed(names) {
  const all = (await readdir(inRoot('test', 'bench')).catch(() => []))
    .filter((file) => file.endsWith('.bench.ts'))
    .sort();
  const chosen = all.filter((file) => names.length === 0 || names.some((name) => file.startsWith(`${name}.`)));
  if (chosen.length > 0) return chosen;
  throw new SetupProblem({
    what:
      names.length === 0 ? 'There are no measurements yet.' : `There is no measurement called ${names.join(' or ')}.`,
    where: 'test/bench',
    doNext: `name one of: ${all.map((file) => file.split('.')[0]).join(', ') || 'none so far'}`,
  });
}
