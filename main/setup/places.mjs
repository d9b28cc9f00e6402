// Where things lie. Every path of the set-up is made here, from the place of this file.

import { dirname, join } from 'node:path';
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

/** @param {...string} parts */
export const inRoot = (...parts) => join(ROOT, ...parts);
