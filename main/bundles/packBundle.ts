import { BUNDLE_LIMITS } from '../../core/evidence/bundle/unpackBundle.ts';
import { writeBundle } from '../../core/evidence/bundle/writeBundle.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { CORE_VERSION } from '../../core/version.ts';
import { sha256Of } from '../store/sealedRecord.ts';
import { tooLarge } from './bundleSizes.ts';
import { wholeFile } from './wholeFile.ts';

export interface PackWish {
  /** Already without the private fields that were not asked for. */
  readonly record: VehicleRecord;
  /** The evidence sheet as HTML. */
  readonly sheet: string;
  /** Captures of the record that go in, with where they lie. */
  readonly captures: readonly {
    readonly captureId: string;
    readonly name: string;
    readonly sha256: string;
    readonly path: string;
  }[];
  /** RFC 3339. */
  readonly madeAt: string;
}

export interface PackedBundle {
  readonly bytes: Uint8Array;
  readonly manifestSha256: string;
}

/** Packs the captures exactly as they lie on disk. Refused by name where one of them is not what was recorded. */
export async function packBundle({ record, sheet, captures, madeAt }: PackWish): Promise<Outcome<PackedBundle>> {
  const packed: { captureId: string; name: string; bytes: Uint8Array }[] = [];
  const changed: string[] = [];
  let total = Buffer.byteLength(sheet);
  for (const { captureId, name, sha256, path } of captures) {
    const file = await wholeFile(path, name, BUNDLE_LIMITS.bytes);
    if (!file.ok) return file;
    total += file.value.byteLength;
    const problem = tooLarge(total);
    if (problem !== null) return { ok: false, problem };
    if (sha256Of(file.value) !== sha256) changed.push(name);
    else packed.push({ captureId, name, bytes: file.value });
  }
  if (changed.length > 0) return { ok: false, problem: notAsRecorded(changed) };
  const contents = { record, sheet, captures: packed, madeAt, coreVersion: CORE_VERSION };
  const { bytes, manifestSha256 } = await writeBundle(contents, sha256Of);
  return { ok: true, value: { bytes, manifestSha256 } };
}

const notAsRecorded = (names: readonly string[]) => ({
  id: 'bundle.captureChanged',
  what: `${names.join(', ')}: what lies there now is not what was recorded; the hashes differ.`,
  where: names[0] ?? 'the bundle',
  doNext: 'Say where the file of the recording is, or leave it out of the bundle.',
});
