import { BUNDLE_LIMITS } from '../../core/evidence/bundle/unpackBundle.ts';
import { sha256Of } from '../store/sealedRecord.ts';
import { numbersInCapture } from './numbersInCapture.ts';
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
    else weighed.push({ captureId, state: 'ready', vehicleNumbers: (await numbersInCapture(name, file.value)).size });
  }
  return weighed;
}
