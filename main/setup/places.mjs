// Where things lie. Every path of the set-up is made here, from the place of this file.

import { realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';

/** The folder of the repository. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** What the build writes; the program is run from here. */
export const DIST = join(ROOT, 'dist');

/** What can be thrown away at any time and is made again: types, bundles of tools, the fallback runtime, reports. */
export const CACHE = join(ROOT, '.cache');

/** The same for a release: smaller, without maps. The program is packed from here; electron-builder.yml names it too. */
export const RELEASE_DIST = join(CACHE, 'release');

/** Packed programs for the tests. */
export const PACKED = join(CACHE, 'packed');

/**
 * Whether the module at this address is the one that Node was started with, by whatever name: Node knows a module by its real
 * path, and was perhaps given one through a link.
 * @param {string} address
 */
export function isStarted(address) {
  try {
    return argv[1] !== undefined && realpathSync(argv[1]) === fileURLToPath(address);
  } catch {
    return false; // what it was started with is no file
  }
}

/** @param {...string} parts */
export const inRoot = (...parts) => join(ROOT, ...parts);
