// What a bundle for a second opinion holds, told by its manifest: each file with its length and SHA-256.

import { z } from 'zod';

export const BUNDLE_FORMAT = 'tailtrace-bundle';
export const BUNDLE_VERSION = 1;

export const MANIFEST_NAME = 'manifest.json';
/** Holds the manifest's own hash, so that a flipped byte in it is found too. Whoever changes both is not found by this. */
export const MANIFEST_HASH_NAME = 'manifest.sha256';
export const RECORD_NAME = 'record.json';
export const SHEET_NAME = 'sheet.html';

/** The only names there are in a bundle. None of them is a path, and none comes from a person. */
export const BUNDLE_NAME = /^(?:manifest\.json|manifest\.sha256|record\.json|sheet\.html|capture-[1-9]\d{0,2})$/;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

const fileSchema = z.strictObject({
  /** Name inside the bundle. */
  path: z.string().regex(BUNDLE_NAME),
  /** Name for people: a capture's own file name, without folders. */
  name: z.string().max(500),
  bytes: z.number().int().nonnegative(),
  sha256,
});

export const manifestSchema = z.strictObject({
  format: z.literal(BUNDLE_FORMAT),
  version: z.literal(BUNDLE_VERSION),
  /** Version of the core that made the numbers. */
  coreVersion: z.string().max(100),
  madeAt: z.iso.datetime({ offset: true }),
  record: fileSchema,
  /** SHA-256 of the record in canonical form (RFC 8785), which does not change with its layout. */
  recordCanonicalSha256: sha256,
  sheet: fileSchema,
  captures: z.array(fileSchema.extend({ captureId: z.string().min(1).max(64) })).max(999),
  /**
   * A place for a signed time stamp by a third party (RFC 3161), as base64 text. It is not made and not checked here; it
   * is left out of what the manifest's own hash is taken over.
   */
  timeStamp: z.string().max(100_000).nullable(),
});

export type Manifest = z.infer<typeof manifestSchema>;
export type BundleFile = z.infer<typeof fileSchema>;

/** Every file that the manifest lists, in the order of the bundle. */
export function listedFiles({ record, sheet, captures }: Manifest): BundleFile[] {
  return [record, sheet, ...captures];
}
