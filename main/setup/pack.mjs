// Packs the program with electron-builder: for release, or as plain folders for the tests.

import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build as bundle } from './build.mjs';
import { inRoot, PACKED, ROOT } from './places.mjs';
import { SetupProblem } from './problem.mjs';
import { pinnedVersion } from './runtime.mjs';

/** @typedef {import('./runtime.mjs').Runtime} Runtime */

/** Builds the release bundles; all parts must be there. */
async function buildRelease() {
  const { missing } = await bundle({ release: true });
  if (missing.length === 0) return;
  throw new SetupProblem({
    what: `Parts of the program are missing: ${missing.join(', ')}.`,
    where: ROOT,
    doNext: 'restore these files from the repository and run the command again',
  });
}

/**
 * Packs for release, with the pinned Electron. Refuses any other.
 * @param {Runtime} runtime
 * @param {readonly string[]} platforms electron-builder's --linux, --win, --mac; none means this one
 */
export async function packForRelease(runtime, platforms) {
  refuseFallback(runtime);
  await buildRelease();
  const { build, createTargets, Platform } = await import('electron-builder');
  const named = { '--linux': Platform.LINUX, '--win': Platform.WINDOWS, '--mac': Platform.MAC };
  const chosen = platforms.flatMap((flag) => (flag in named ? [named[/** @type {keyof typeof named} */ (flag)]] : []));
  return build({
    projectDir: ROOT,
    publish: 'never',
    targets: createTargets(chosen.length > 0 ? chosen : [Platform.current()]),
    config: { extends: 'electron-builder.yml', electronVersion: runtime.version },
  });
}

/**
 * An old runtime is out of support: nobody may get it from us.
 * @param {Runtime} runtime
 */
export function refuseFallback(runtime) {
  if (runtime.kind === 'current' && runtime.version === pinnedVersion()) return;
  throw new SetupProblem({
    what: `Electron ${runtime.version} is an old fallback for development and tests. It is never packed for release.`,
    where: runtime.folder,
    doNext: `run this on a network that reaches Electron’s release host, so that Electron ${pinnedVersion()} is used`,
  });
}

/**
 * Packs plain folders for the tests, with whichever runtime is here.
 * @param {Runtime} runtime
 * @returns {Promise<{ shipping: string, inspectable: string }>} the two executables: as it ships, and the same with only the
 *   fuse switched on without which no test can drive it
 */
export async function packForTest(runtime) {
  await buildRelease();
  await rm(PACKED, { recursive: true, force: true });
  await mkdir(PACKED, { recursive: true });
  const { build, DIR_TARGET, Platform } = await import('electron-builder');
  await build({
    projectDir: ROOT,
    publish: 'never',
    targets: Platform.current().createTarget(DIR_TARGET),
    config: {
      extends: runtime.kind === 'fallback' ? await configurationForFallback() : 'electron-builder.yml',
      directories: { output: PACKED },
      electronVersion: runtime.version,
      electronDist: runtime.folder,
    },
  });
  const shipping = join(PACKED, 'linux-unpacked');
  const inspectable = join(PACKED, 'inspectable');
  await cp(shipping, inspectable, { recursive: true });
  await allowInspection(join(inspectable, 'tailtrace'));
  return { shipping: join(shipping, 'tailtrace'), inspectable: join(inspectable, 'tailtrace') };
}

/** The old runtime lacks one fuse, and to set what is not there fails: the same configuration without that line. */
async function configurationForFallback() {
  const text = await readFile(inRoot('electron-builder.yml'), 'utf8');
  const without = text.replace(/^ *grantFileProtocolExtraPrivileges:.*\n/m, '');
  if (without === text) throw new Error('electron-builder.yml no longer sets grantFileProtocolExtraPrivileges');
  const place = join(PACKED, 'electron-builder.fallback.yml');
  await writeFile(place, without);
  return place;
}

/** @param {string} executable */
async function allowInspection(executable) {
  const { flipFuses, FuseV1Options, FuseVersion } = await import('@electron/fuses');
  await flipFuses(executable, { version: FuseVersion.V1, [FuseV1Options.EnableNodeCliInspectArguments]: true });
}

export const releaseFolder = () => inRoot('release');
