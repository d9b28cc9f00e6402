// The entries of a record in one order, whatever the order of the keys in its document: a record that went through its
// canonical form lists them otherwise, and sums over them must come out the same to the last bit (T-EV-3).

import type { CaptureRef, Reading, RecordWindow, TroubleCode, VehicleRecord } from './schema.ts';

/** Captures by the moment they were added. */
export function capturesInOrder({ captures }: VehicleRecord): readonly CaptureRef[] {
  return Object.values(captures).sort((a, b) => compare(a.addedAt, b.addedAt) || compare(a.id, b.id));
}

/** Windows in the order in which people go through them: capture by capture, each by its start. */
export function windowsInOrder(record: VehicleRecord): readonly RecordWindow[] {
  const order = new Map(capturesInOrder(record).map((capture, index) => [capture.id, index]));
  const place = (window: RecordWindow): number => order.get(window.captureId) ?? 0;
  return Object.values(record.windows).sort(
    (a, b) => place(a) - place(b) || a.startS - b.startS || (a.bank ?? 0) - (b.bank ?? 0) || compare(a.id, b.id),
  );
}

/** Temperature readings by the moment they were taken. */
export function readingsInOrder({ readings }: VehicleRecord): readonly Reading[] {
  return Object.values(readings).sort((a, b) => compare(a.takenAt, b.takenAt) || compare(a.id, b.id));
}

/** Trouble codes by their letters. */
export function troubleCodesInOrder({ troubleCodes }: VehicleRecord): readonly TroubleCode[] {
  return Object.values(troubleCodes).sort((a, b) => compare(a.code, b.code) || compare(a.id, b.id));
}

/** By UTF-16 units: an order that depends on no language. */
function compare(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
