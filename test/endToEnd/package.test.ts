// The packed program: what is in it, which doors of the runtime are shut, and that it starts. The flavour that ships cannot
// be driven by a test (its inspector is shut), so it is started to make a picture of itself, once as an ordinary user with
// the operating system's sandbox; a second flavour differs in that one fuse and is driven.

import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmod, chown, cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBundle } from '../../core/evidence/bundle/writeBundle.ts';
import { isRoot, onHiddenScreen } from '../../main/setup/launch.mjs';
import { inRoot } from '../../main/setup/places.mjs';
import { presentRuntime } from '../../main/setup/runtime.mjs';
import { takeSnapshot } from '../../main/setup/snapshot.mjs';
import { keptRecord } from '../support/keptRecord.ts';
import { launchProgram } from '../support/launchProgram.ts';
import { filesOfAsar } from '../support/readAsar.ts';
import { pngFacts } from '../support/readPng.ts';

const run = promisify(execFile);
/** How the executable writes a fuse that is on: the digit one. A fuse that is not there at all is undefined. */
const ON = '1'.charCodeAt(0);
/** Of "nobody" on every Debian. */
const NOBODY = 65_534;

let shipping = '';
let inspectable = '';
let scratch = '';

beforeAll(async () => {
  scratch = await mkdtemp(join(tmpdir(), 'tailtrace-package-'));
  const { stdout } = await run(process.execPath, [inRoot('main', 'setup', 'dist.mjs'), '--dir-for-test'], {
    maxBuffer: 64 * 1024 * 1024,
  });
  const said: unknown = JSON.parse(stdout.trim().split('\n').at(-1) ?? '');
  if (typeof said !== 'object' || said === null || !('shipping' in said) || !('inspectable' in said)) {
    throw new Error(`npm run dist -- --dir-for-test named no folders: ${stdout}`);
  }
  shipping = String(said.shipping);
  inspectable = String(said.inspectable);
});

afterAll(() => rm(scratch, { recursive: true, force: true }));

const archiveOf = (executable: string): string => join(dirname(executable), 'resources', 'app.asar');

/** Fuses by name, as far as this runtime has them. */
async function fusesOf(executable: string): Promise<Record<string, boolean>> {
  const wire = await getCurrentFuseWire(executable);
  const names = Object.entries(FuseV1Options).filter(
    (entry): entry is [string, FuseV1Options] => typeof entry[1] === 'number',
  );
  return Object.fromEntries(
    names.flatMap(([name, place]) => (wire[place] === undefined ? [] : [[name, Number(wire[place]) === ON]])),
  );
}

describe('T-EL-19: fuses', () => {
  test('of the flavour that ships', async () => {
    const fuses = await fusesOf(shipping);
    expect(fuses).toMatchObject({
      RunAsNode: false,
      EnableNodeOptionsEnvironmentVariable: false,
      EnableNodeCliInspectArguments: false,
      EnableCookieEncryption: true,
      EnableEmbeddedAsarIntegrityValidation: true,
      OnlyLoadAppFromAsar: true,
      LoadBrowserProcessSpecificV8Snapshot: false,
    });
    // Runtimes before 29 do not have this one.
    if (presentRuntime()?.kind === 'current') expect(fuses.GrantFileProtocolExtraPrivileges).toBe(false);
  });

  test('of the flavour that is driven: the same but for the inspector', async () => {
    expect(await fusesOf(inspectable)).toEqual({ ...(await fusesOf(shipping)), EnableNodeCliInspectArguments: true });
  });
});

describe('what is in the package', () => {
  test('the bundles, the sample drives, an icon: no packages, no sources, no maps', () => {
    const files = [...filesOfAsar(archiveOf(shipping)).keys()];
    expect(files).toEqual(expect.arrayContaining(['package.json', 'dist/main/index.cjs', 'dist/renderer/index.html']));
    expect(files).toEqual(expect.arrayContaining(['assets/drives/van-before.csv', 'dist/main/licences.json']));
    expect(files.filter((file) => !/^(dist\/(main|renderer)\/|assets\/|package\.json$)/.test(file))).toEqual([]);
    expect(files.filter((file) => /node_modules|\.map$|\.tsx?$/.test(file))).toEqual([]);
  });

  test('the sample drives lie beside the archive as plain files', () => {
    const drives = [...filesOfAsar(archiveOf(shipping))].filter(([file]) => file.startsWith('assets/drives/'));
    expect(drives.length).toBeGreaterThan(6);
    expect(drives.filter(([, { unpacked }]) => !unpacked)).toEqual([]);
  });

  test('T-EL-4: nothing in it switches the sandbox off', async () => {
    const archive = await readFile(archiveOf(shipping), 'latin1');
    expect(archive.includes('--no-sandbox')).toBe(false);
    expect(/appendSwitch\([^)]*no-sandbox/.test(archive)).toBe(false);
  });

  test('the licences of runtime, packages and program lie beside it', async () => {
    for (const name of ['LICENSE.tailtrace.txt', 'LICENCES.packages.txt', 'LICENSES.chromium.html']) {
      expect((await readFile(join(dirname(shipping), name))).length, name).toBeGreaterThan(500);
    }
  });
});

describe('it starts', () => {
  test('the flavour that ships makes a picture of its window', async () => {
    const picture = join(scratch, 'shipping.png');
    await takeSnapshot(shipping, picture, '1280x800', isRoot() ? ['--no-sandbox'] : []);
    expect(pngFacts(picture)).toMatchObject({ width: 1280, height: 800 });
    expect(pngFacts(picture).bytes).toBeGreaterThan(20_000);
  });

  test('the same as an ordinary user, inside the sandbox of the operating system', async () => {
    const home = await mkdtemp(join(scratch, 'home-'));
    const copy = join(scratch, 'installed');
    await cp(dirname(shipping), copy, { recursive: true });
    const picture = join(home, 'ordinary.png');
    const { program, given } = onHiddenScreen(join(copy, 'tailtrace'), [
      `--snapshot=${picture}`,
      '--snapshot-size=1280x800',
    ]);
    await chmod(scratch, 0o755);
    if (isRoot()) {
      // As the installer leaves it, for systems that allow no user namespaces.
      await chmod(join(copy, 'chrome-sandbox'), 0o4755);
      await chown(home, NOBODY, NOBODY);
    }
    await run(program, given, {
      ...(isRoot() ? { uid: NOBODY, gid: NOBODY } : {}),
      env: { PATH: process.env.PATH ?? '', HOME: home, TAILTRACE_DATA_DIR: join(home, 'data') },
      timeout: 60_000,
    });
    expect(pngFacts(picture).bytes).toBeGreaterThan(20_000);
  });

  test('the other flavour opens its window, is packed, and is the version it says', async () => {
    const program = await launchProgram({ packed: inspectable });
    try {
      await program.settled();
      const facts = await program.app.evaluate(({ app }) => ({
        packed: app.isPackaged,
        path: app.getAppPath(),
        version: app.getVersion(),
        name: app.getName(),
        runtime: process.versions.electron,
      }));
      const { version } = JSON.parse(await readFile(inRoot('package.json'), 'utf8'));
      expect(facts).toMatchObject({ packed: true, version, name: 'Tailtrace', runtime: presentRuntime()?.version });
      expect(facts.path.endsWith('app.asar')).toBe(true);
      expect(program.errors).toEqual([]);
    } finally {
      await program.close();
    }
  });

  test('checks a bundle, in a process whose script lies in the archive', async () => {
    const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
    const contents = {
      record: keptRecord(),
      sheet: '',
      captures: [],
      madeAt: '2026-11-24T15:30:00Z',
      coreVersion: '1',
    };
    const { bytes, manifestSha256 } = await writeBundle(contents, sha256);
    const bundle = join(scratch, 'van.tailtrace-bundle');
    await writeFile(bundle, bytes);
    const program = await launchProgram({ packed: inspectable, args: [bundle] });
    try {
      await program.page.locator(`[data-manifest="${manifestSha256}"]`).waitFor();
      expect(program.errors).toEqual([]);
    } finally {
      await program.close();
    }
  });
});
