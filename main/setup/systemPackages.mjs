// Debian's packages that the window, its pictures and the tests need. As root on Debian and what descends from it they are
// installed; anyone else is told in one sentence what is missing. Other systems are left alone.

import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { lastLines, runToEnd } from './child.mjs';
import { SetupProblem } from './problem.mjs';
import { say } from './say.mjs';
import { inTurn } from './turns.mjs';

/**
 * What a command needs beyond Node and npm's packages.
 * @typedef {object} Needs
 * @property {boolean} [window] opens the program's window
 * @property {boolean} [hiddenScreen] does so where there may be no screen
 * @property {boolean} [tests] runs the whole test suite
 */

/** Each row is one package; names after the first are what later releases call it. */
const FOR_WINDOW = [
  ['libgtk-3-0', 'libgtk-3-0t64'],
  ['libnss3'],
  ['libasound2', 'libasound2t64'],
  ['libgbm1'],
  ['libxss1'],
  ['libatk-bridge2.0-0', 'libatk-bridge2.0-0t64'],
  ['libdrm2'],
  ['libxkbcommon0'],
  ['fonts-dejavu-core'],
];
const FOR_HIDDEN_SCREEN = [['xvfb'], ['xauth']];
/** The window is also shown in the distribution's current browser engine; the runtime for closed networks is old. */
const FOR_TESTS = [['chromium', 'chromium-browser']];

/**
 * @param {Needs} needs
 * @returns {string[][]}
 */
export function wantedPackages(needs) {
  return [
    ...(needs.window || needs.hiddenScreen || needs.tests ? FOR_WINDOW : []),
    ...(needs.hiddenScreen || needs.tests ? FOR_HIDDEN_SCREEN : []),
    ...(needs.tests ? FOR_TESTS : []),
  ];
}

/**
 * The rows of which no name is installed.
 * @param {readonly (readonly string[])[]} wanted
 * @param {ReadonlySet<string>} installed
 */
export function missingPackages(wanted, installed) {
  return wanted.filter((names) => !names.some((name) => installed.has(name)));
}

/**
 * The names in the output of dpkg-query that are installed; a package that was removed but left its settings is not.
 * @param {string} listing lines of "name<tab>status"
 */
export function installedNames(listing) {
  const names = listing
    .split('\n')
    .map((line) => line.split('\t'))
    .filter(([, status]) => status?.startsWith('ii'))
    .map(([name]) => (name ?? '').replace(/:.*$/, ''));
  return new Set(names);
}

/**
 * Whether /etc/os-release describes Debian or a descendant.
 * @param {string} osRelease
 */
export function isDebian(osRelease) {
  return /^ID(_LIKE)?=.*\b(debian|ubuntu)\b/m.test(osRelease);
}

/**
 * Installs what is missing, or says what is.
 * @param {Needs} needs
 */
export async function installSystemPackages(needs) {
  const wanted = wantedPackages(needs);
  if (wanted.length === 0 || process.platform !== 'linux' || !existsSync('/usr/bin/dpkg-query')) return;
  if (!isDebian(await readFile('/etc/os-release', 'utf8').catch(() => ''))) return;
  const missing = async () => missingPackages(wanted, await readInstalled(wanted.flat()));
  const rows = await missing();
  if (rows.length === 0) return;
  if (process.getuid?.() !== 0) throw notInstalled(await nameOfEach(rows));
  await inTurn(async () => install(await missing())); // another command may have been first
}

/** @param {readonly (readonly string[])[]} rows */
async function install(rows) {
  if (rows.length === 0) return;
  say(`Installing system packages: ${(await nameOfEach(rows)).join(', ')}. This is done once.`);
  await aptGet(['update']);
  await aptGet(['install', '--yes', '--no-install-recommends', ...(await nameOfEach(rows))]); // known better by now
}

/** apt and dpkg speak the language of the system; what is looked for in their words is English. */
const inEnglish = () => ({ ...process.env, LC_ALL: 'C', LANGUAGE: 'C' });

/** A placeholder of dpkg-query. */
const field = (/** @type {string} */ name) => `$\{${name}}`;

/** @param {readonly string[]} names */
async function readInstalled(names) {
  // Unknown names make it end with status 1 and still list the rest.
  const format = `--showformat=${field('Package')}	${field('db:Status-Abbrev')}
`;
  const { output } = await runToEnd('dpkg-query', ['--show', format, ...names]);
  return installedNames(output);
}

/**
 * The name under which this release has each package; the first where it has none, or its lists were never fetched.
 * @param {readonly (readonly string[])[]} rows
 */
export async function nameOfEach(rows) {
  return Promise.all(
    rows.map(async (names) => {
      for (const name of names) {
        const { output } = await runToEnd('apt-cache', ['policy', name], { env: inEnglish() });
        if (/Candidate: (?!\(none\))/.test(output)) return name;
      }
      return String(names[0]);
    }),
  );
}

/** @param {readonly string[]} given */
async function aptGet(given) {
  const env = { ...inEnglish(), DEBIAN_FRONTEND: 'noninteractive' };
  const ended = await runToEnd('apt-get', ['-qq', '-o', 'DPkg::Lock::Timeout=120', ...given], { env });
  if (ended.status === 0) return;
  throw new SetupProblem({
    what: `apt-get ${given[0]} did not succeed: ${lastLines(ended.output)}.`,
    where: 'the system packages',
    doNext: `run "apt-get ${given.join(' ')}" by hand, mend what it says, and run the command again`,
  });
}

/** @param {readonly string[]} names */
function notInstalled(names) {
  return new SetupProblem({
    what: `Some system packages are missing: ${names.join(', ')}.`,
    where: 'this computer',
    doNext: `install them with "sudo apt-get install ${names.join(' ')}" and run the command again`,
  });
}
