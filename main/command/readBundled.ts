import type { Outcome } from '../../core/reading/problem.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { HeldBytes } from '../../core/service/coreHost.ts';
import { type CheckedBundle, openBundle } from '../bundles/openBundle.ts';
import { sha256Of } from '../store/sealedRecord.ts';
import { type Columns, type InputPlace, type ReadWithChoice, readBytes } from './readInput.ts';

/** A capture that came in a bundle, read with the columns that its record names. */
export interface BundledCapture {
  readonly captureId: string;
  readonly read: ReadWithChoice;
}

/** A bundle that is as it was made. */
export interface ReadBundle {
  readonly bundle: CheckedBundle;
  readonly record: VehicleRecord;
  /** Of each enclosed capture, in the order of the bundle. */
  readonly captures: readonly Outcome<BundledCapture>[];
}

/** Opens a bundle, checks all of it, and reads its captures. Columns that a flag gives win over those of the record. */
export async function readBundled(
  path: string,
  name: string,
  place: InputPlace,
  columns: Columns,
): Promise<Outcome<ReadBundle>> {
  const opened = await openBundle(path, name);
  if (!opened.ok) return opened;
  const bundle = opened.value;
  const { record } = bundle;
  const captures: Outcome<BundledCapture>[] = [];
  for (const { captureId, name: called, bytes } of bundle.captures) {
    const choice = record.captures[captureId]?.columnChoice ?? null;
    const read = await readBytes(place, columns, heldBytes(called, bytes), choice);
    captures.push(read.ok ? { ok: true, value: { captureId, read: read.value } } : read);
  }
  return { ok: true, value: { bundle, record, captures } };
}

/** As large as those of a file that is read from the disk. */
const CHUNK_BYTES = 1024 * 1024;

function heldBytes(name: string, bytes: Uint8Array): Pick<HeldBytes, 'source' | 'finish'> {
  async function* chunks(): AsyncGenerator<Uint8Array, void, undefined> {
    for (let at = 0; at < bytes.length; at += CHUNK_BYTES) yield bytes.slice(at, at + CHUNK_BYTES);
  }
  return {
    source: { name, bytes: bytes.length, rereadable: true, chunks },
    finish: async () => ({ ok: true, value: { sha256: sha256Of(bytes) } }),
  };
}
