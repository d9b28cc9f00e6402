import { vehicleNumbersInText } from '../../core/diagnostics/vehicleNumber.ts';
import { BUNDLE_LIMITS } from '../../core/evidence/bundle/unpackBundle.ts';
import { sha256Of } from '../store/sealedRecord.ts';
import { wholeFile } from './wholeFile.ts';

/** A capture of a record, with where it lies on this computer; null where it was not found. */
export interface PlacedCapture {
  readonly captureId: string;
  readonly name: string;
  /** As the record has it. */
  readonly sha256: string;
  readonly path: string | null;
}

/** Whether a capture can go into a bundle. */
export interface WeighedCapture {
  readonly captureId: string;
  /** 'changed': what lies there is not what was recorded. 'unread': it is there and cannot be read, or is too long. */
  readonly state: 'ready' | 'notFound' | 'changed' | 'unread';
  /** Texts in it that look like a vehicle number, each once (T-PRIV-3). */
  readonly vehicleNumbers: number;
}

/** Looks through the captures of a record, one after another. */
export async function weighCaptures(captures: readonly PlacedCapture[]): Promise<WeighedCapture[]> {
  const weighed: WeighedCapture[] = [];
  for (const { captureId, name, sha256, path } of captures) {
    const file = path === null ? null : await wholeFile(path, name, BUNDLE_LIMITS.bytes);
    if (file === null) weighed.push({ captureId, state: 'notFound', vehicleNumbers: 0 });
    else if (!file.ok) weighed.push({ captureId, state: 'unread', vehicleNumbers: 0 });
    else if (sha256Of(file.value) !== sha256) weighed.push({ captureId, state: 'changed', vehicleNumbers: 0 });
    else weighed.push({ captureId, state: 'ready', vehicleNumbers: countVehicleNumbers(file.value) });
  }
  return weighed;
}

const PIECE = 8 * 1024 * 1024;
/** Longer than a number with what stands around it, also where every character takes two bytes. */
const OVERLAP = 64;

function countVehicleNumbers(bytes: Uint8Array): number {
  const found = new Set<string>();
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at < text.length; at += PIECE) {
    // The second byte of a character in UTF-16 is a NUL for every letter that counts here.
    const piece = text.toString('latin1', at, Math.min(text.length, at + PIECE + OVERLAP)).replaceAll('\0', '');
    for (const number of vehicleNumbersInText(piece)) found.add(number);
  }
  return found.size;
}
