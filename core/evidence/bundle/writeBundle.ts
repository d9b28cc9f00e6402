// Packs what a colleague needs to see the same windows, compute the same numbers, and disagree in writing.

import { strToU8, zipSync } from 'fflate';
import { canonicalJson } from '../../record/canonical.ts';
import type { VehicleRecord } from '../../record/schema.ts';
import {
  BUNDLE_FORMAT,
  BUNDLE_VERSION,
  MANIFEST_HASH_NAME,
  MANIFEST_NAME,
  type Manifest,
  RECORD_NAME,
  SHEET_NAME,
} from './manifest.ts';

/** SHA-256 as 64 lower-case hexadecimal digits, by the platform: core has no digest of its own. */
export type Sha256 = (bytes: Uint8Array) => string | Promise<string>;

export interface BundleContents {
  /** Already without the private fields that were not asked for. */
  readonly record: VehicleRecord;
  /** The sheet as HTML. */
  readonly sheet: string;
  /** The captures' bytes as they were recorded. */
  readonly captures: readonly { readonly captureId: string; readonly name: string; readonly bytes: Uint8Array }[];
  /** RFC 3339. */
  readonly madeAt: string;
  readonly coreVersion: string;
}

/** A bundle, and the hash of its manifest to hand over on another path. */
export interface WrittenBundle {
  readonly bytes: Uint8Array;
  readonly manifest: Manifest;
  readonly manifestSha256: string;
}

/** Every entry has the same time, so that the same contents give the same bytes. 1980 is where zip begins to count. */
const FIXED_TIME = new Date(1980, 0, 1);

/** A third of the time of the usual level 6 for a tenth more bytes, measured on text captures. */
const LEVEL = 1;

/** Writes a bundle. At most 999 captures. The same contents give the same bytes. */
export async function writeBundle(contents: BundleContents, sha256: Sha256): Promise<WrittenBundle> {
  const canonical = strToU8(canonicalJson(contents.record));
  const sheet = strToU8(contents.sheet);
  const fileOf = async (path: string, name: string, bytes: Uint8Array) => ({
    path,
    name,
    bytes: bytes.length,
    sha256: await sha256(bytes),
  });
  const record = await fileOf(RECORD_NAME, RECORD_NAME, canonical);
  const captures = await Promise.all(
    contents.captures.map(async ({ captureId, name, bytes }, i) => ({
      ...(await fileOf(`capture-${i + 1}`, name, bytes)),
      captureId,
    })),
  );
  const manifest: Manifest = {
    format: BUNDLE_FORMAT,
    version: BUNDLE_VERSION,
    coreVersion: contents.coreVersion,
    madeAt: contents.madeAt,
    record,
    recordCanonicalSha256: record.sha256,
    sheet: await fileOf(SHEET_NAME, SHEET_NAME, sheet),
    captures,
    timeStamp: null,
  };
  const manifestSha256 = await manifestHash(manifest, sha256);
  const files: Record<string, Uint8Array> = {
    [MANIFEST_NAME]: strToU8(canonicalJson(manifest)),
    [MANIFEST_HASH_NAME]: strToU8(`${manifestSha256}\n`),
    [RECORD_NAME]: canonical,
    [SHEET_NAME]: sheet,
  };
  contents.captures.forEach(({ bytes }, i) => {
    files[`capture-${i + 1}`] = bytes;
  });
  const bytes = zipSync(files, { level: LEVEL, mtime: FIXED_TIME });
  return { bytes, manifest, manifestSha256 };
}

/** The hash of a manifest in canonical form, without its time stamp, which can only be made afterwards. */
export async function manifestHash(manifest: Manifest, sha256: Sha256): Promise<string> {
  return sha256(strToU8(canonicalJson({ ...manifest, timeStamp: null })));
}
