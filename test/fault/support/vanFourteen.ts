import { newVehicle } from '../../../core/record/newVehicle.ts';
import type { VehicleRecord } from '../../../core/record/schema.ts';

/** An invented van whose record carries a number, and is about as large as a long history makes one (400 kB). */
export function vanFourteen(number: number, bytes = 400_000): VehicleRecord {
  const record = newVehicle({ id: 'van-14', name: 'Van 14', createdAt: '2026-03-02T08:00:00Z' });
  const notes: VehicleRecord['notes'] = {};
  for (let i = 0; i * 4000 < bytes; i++) {
    const id = `note-${i}`;
    notes[id] = {
      id,
      captureId: null,
      startS: null,
      endS: null,
      text: `${number} `.padEnd(3800, 'The rear sensor follows the front one. '),
      author: 'Reader',
      writtenAt: '2026-03-02T08:00:00Z',
      changedAt: null,
    };
  }
  return { ...record, identity: { ...record.identity, mileage: { value: number, unit: 'km' } }, notes };
}

/** The number that a record of `vanFourteen` carries; -1 where its parts do not agree. */
export function numberOf(record: VehicleRecord): number {
  const number = record.identity.mileage?.value ?? -1;
  const notes = Object.values(record.notes);
  return notes.length > 0 && notes.every((note) => note.text.startsWith(`${number} `)) ? number : -1;
}
