import type { Note, VehicleRecord } from '../../record/schema.ts';
import { capturesInOrder } from '../sections/captures.ts';
import type { DecimalSign } from '../sheet.ts';
import { KEPT_SPACE, showNumber } from '../words/numbers.ts';
import { stretchWords } from '../words/quantities.ts';

/** The vehicle's own notes first, then those of each capture, each in the order of time; equal places by writing time. */
export function notesInOrder(record: VehicleRecord): Note[] {
  const order = new Map(capturesInOrder(record.captures).map(({ id }, i) => [id, i]));
  const rank = ({ captureId }: Note) => (captureId === null ? -1 : (order.get(captureId) ?? order.size));
  return Object.values(record.notes).sort(
    (a, b) =>
      rank(a) - rank(b) || (a.startS ?? 0) - (b.startS ?? 0) || Date.parse(a.writtenAt) - Date.parse(b.writtenAt),
  );
}

/** Where a note is pinned: "the vehicle", "van-before.csv, at 80.0 s", "van-before.csv, 61.2 to 121.2 s". */
export function placeWords({ captureId, startS, endS }: Note, record: VehicleRecord, sign: DecimalSign): string {
  if (captureId === null) return 'the vehicle';
  const name = record.captures[captureId]?.name ?? 'a capture that is gone';
  if (startS === null) return name;
  if (endS === null) return `${name}, at ${showNumber(startS, 1, sign)}${KEPT_SPACE}s`;
  return `${name}, ${stretchWords(startS, endS, sign)}`;
}
