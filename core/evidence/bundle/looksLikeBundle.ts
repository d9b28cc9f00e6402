import { ZipDirectory } from '../../reading/packed/zipDirectory.ts';
import { MANIFEST_NAME, RECORD_NAME } from './manifest.ts';

export const BUNDLE_ENDING = '.tailtrace-bundle';

/** Bytes at the end of a file in which the directory of a bundle lies, however many captures it holds. */
export const BUNDLE_TAIL_BYTES = 256 * 1024;

/**
 * Whether a file is meant to be a bundle: by its ending, or by what a zip archive's directory names. `tail` is the last
 * BUNDLE_TAIL_BYTES of the file, or all of a shorter one. Says nothing about whether the bundle is whole: readBundle does.
 */
export function looksLikeBundle(name: string, tail: Uint8Array): boolean {
  if (name.toLowerCase().endsWith(BUNDLE_ENDING)) return true;
  const directory = new ZipDirectory();
  directory.took(tail);
  return [MANIFEST_NAME, RECORD_NAME].every((entry) => directory.sumOf(entry) !== null);
}
