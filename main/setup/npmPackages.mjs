// The npm packages: installed exactly as package-lock.json says, and only when what lies in node_modules differs.

import { readFile } from 'node:fs/promises';
import { npmReason, runNpm } from './child.mjs';
import { inRoot, ROOT } from './places.mjs';
import { SetupProblem } from './problem.mjs';
import { sayWhenSlow } from './say.mjs';
import { inTurn } from './turns.mjs';

/**
 * @typedef {{ version?: string, integrity?: string, optional?: boolean, link?: boolean }} LockEntry
 * @typedef {{ packages?: Record<string, LockEntry> }} Lock
 */

/** Installs the packages if they are not the wanted ones. */
export async function installNpmPackages() {
  if (await areInstalled()) return;
  await inTurn(async () => {
    if (!(await areInstalled())) await install(); // another command may have been first
  });
}

async function areInstalled() {
  return sameAsInstalled(await readLock('package-lock.json'), await readLock('node_modules/.package-lock.json'));
}

async function install() {
  // No package's own install script is run: none is needed, and what a stranger's script would do is nobody's wish.
  const given = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const ended = await sayWhenSlow('Installing the npm packages; this is done once and takes about a minute.', () =>
    runNpm(given, { cwd: ROOT }),
  );
  if (ended.status === 0) return;
  throw new SetupProblem({
    what: ended.started ? `The npm packages could not be installed: ${npmReason(ended.output)}.` : 'npm was not found.',
    where: ROOT,
    doNext: ended.started
      ? 'see that the npm registry can be reached and that the disk has 2 GB free, then run the command again'
      : 'install Node.js with npm, then run the command again',
  });
}

/**
 * Whether every package of the wanted lock is installed in that version. Packages for other systems may be missing.
 * npm writes the second file last, so an interrupted installation does not count.
 * @param {Lock | null} wanted
 * @param {Lock | null} installed
 */
export function sameAsInstalled(wanted, installed) {
  if (wanted?.packages === undefined || installed?.packages === undefined) return false;
  const places = Object.keys(wanted.packages).filter((place) => place !== '');
  const asWanted = places.every((place) => {
    const want = wanted.packages?.[place];
    const have = installed.packages?.[place];
    if (have === undefined) return want?.optional === true;
    return have.version === want?.version && have.integrity === want?.integrity;
  });
  return asWanted && Object.keys(installed.packages).every((place) => wanted.packages?.[place] !== undefined);
}

/**
 * @param {string} place
 * @returns {Promise<Lock | null>}
 */
async function readLock(place) {
  try {
    return JSON.parse(await readFile(inRoot(place), 'utf8'));
  } catch {
    return null;
  }
}
