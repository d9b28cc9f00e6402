// What every command calls first: a Node that is new enough, the npm packages, and, where the command opens a window, the
// system packages and an Electron runtime. Quick and silent when all is there.

import { readFileSync } from 'node:fs';
import { installNpmPackages } from './npmPackages.mjs';
import { inRoot } from './places.mjs';
import { SetupProblem } from './problem.mjs';
import { installRuntime } from './runtime.mjs';
import { installSystemPackages } from './systemPackages.mjs';

/**
 * Prepares for a command that needs no window.
 */
export async function prepare() {
  checkNode(process.versions.node);
  await installNpmPackages();
}

/**
 * Prepares for a command that opens the program's window.
 * @param {import('./systemPackages.mjs').Needs} needs
 * @returns {Promise<import('./runtime.mjs').Runtime>}
 */
export async function prepareWindow(needs) {
  await prepare();
  await installSystemPackages({ window: true, ...needs });
  return installRuntime();
}

/**
 * Refuses a Node that is too old, with the version that package.json asks for.
 * @param {string} version
 */
export function checkNode(version) {
  const wanted = JSON.parse(readFileSync(inRoot('package.json'), 'utf8')).engines.node.replace('>=', '');
  if (!isOlder(version, wanted)) return;
  throw new SetupProblem({
    what: `Node.js ${version} is too old; Tailtrace needs ${wanted} or later to be built.`,
    where: process.execPath,
    doNext: `install Node.js ${wanted} or later and run the command again`,
  });
}

/**
 * Whether the dotted version `a` comes before `b`.
 * @param {string} a
 * @param {string} b
 */
export function isOlder(a, b) {
  const [first, second] = [a, b].map((version) => version.split('.').map(Number));
  for (let place = 0; place < 3; place++) {
    const difference = (first?.[place] ?? 0) - (second?.[place] ?? 0);
    if (difference !== 0) return difference < 0;
  }
  return false;
}
