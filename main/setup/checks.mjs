// The checks that are no tests: types, format and lint, promises. Each says how to mend what it found.

import { runToEnd } from './child.mjs';
import { inRoot, ROOT } from './places.mjs';

/**
 * @typedef {object} Check
 * @property {string} name
 * @property {readonly string[]} script the tool and its arguments, run by Node
 * @property {string} mend what to do when it fails
 */

const tool = (/** @type {string[]} */ ...place) => inRoot('node_modules', ...place);

/** Only the four rules that need the real types of Node and of every library; the rest is Biome's. */
export const PROMISE_RULES = [
  'no-floating-promises',
  'no-misused-promises',
  'await-thenable',
  'switch-exhaustiveness-check',
];

/**
 * Arguments of oxlint. Folders must be named: without an ignore file it walks into node_modules.
 * @param {readonly string[]} folders
 */
export const promiseLintArguments = (folders) => [
  '--type-aware',
  '--allow=all',
  ...PROMISE_RULES.map((rule) => `--deny=typescript/${rule}`),
  '--format=stylish',
  ...folders,
];

/** @type {readonly Check[]} */
export const CHECKS = [
  {
    name: 'types and walls',
    script: [tool('typescript', 'bin', 'tsc'), '-b', '--pretty', 'false'],
    mend:
      'Each line above names file, line and fault. TS6059, TS6307 and "cannot find name" of something from Node or the ' +
      'DOM are the walls between core, main and renderer: move the code, do not widen the wall.',
  },
  {
    name: 'format and lint',
    script: [tool('@biomejs', 'biome', 'bin', 'biome'), 'check', '--error-on-warnings', '.'],
    mend: 'Run "npm run fix" for what can be mended by itself; the rest is named above with its reason.',
  },
  {
    name: 'promises and switches',
    script: [tool('oxlint', 'bin', 'oxlint'), ...promiseLintArguments(['core', 'main', 'renderer', 'test'])],
    mend:
      'Await each promise named above, return it, or write "void" before it where nobody needs to wait; give each switch ' +
      'the case it misses.',
  },
];

/**
 * Runs one check and says what came of it.
 * @param {Check} check
 * @returns {Promise<boolean>} whether it passed
 */
export async function runCheck(check) {
  const startMs = performance.now();
  const ended = await runToEnd(process.execPath, check.script, { cwd: ROOT });
  const seconds = ((performance.now() - startMs) / 1000).toFixed(1);
  if (ended.status === 0) {
    process.stdout.write(`${check.name}: as they should be (${seconds} s)\n`);
    return true;
  }
  process.stdout.write(
    `${ended.output.trimEnd()}\n${check.name}: not as they should be (${seconds} s)\n${check.mend}\n\n`,
  );
  return false;
}
