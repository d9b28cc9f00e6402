import type { VehicleEvidence } from '../findings/vehicleEvidence.ts';
import { capturesInOrder, readingsInOrder, troubleCodesInOrder, windowsInOrder } from './inOrder.ts';
import type { VehicleRecord } from './schema.ts';

/** What a vehicle is judged from, with `Held` in the place of each capture. */
export interface RecordEvidence<Held> extends Omit<VehicleEvidence, 'captures'> {
  readonly captures: readonly (Held & Omit<VehicleEvidence['captures'][number], 'capture'>)[];
}

/**
 * What a record says that a vehicle is judged from. `held` gives what stands for a capture, or null for one that is not
 * at hand: it and its windows are left out. Equal records give equal evidence in the same order.
 */
export function evidenceOf<Held extends object>(
  record: VehicleRecord,
  held: (captureId: string) => Held | null,
): RecordEvidence<Held> {
  const windows = windowsInOrder(record);
  return {
    captures: capturesInOrder(record).flatMap(({ id, kind }) => {
      const one = held(id);
      return one === null
        ? []
        : [{ ...one, captureId: id, kind, windows: windows.filter(({ captureId }) => captureId === id) }];
    }),
    readings: readingsInOrder(record),
    troubleCodes: troubleCodesInOrder(record).map(({ code }) => code),
    rearSensor: record.identity.rearSensor,
    costs: record.costs,
    bricks: Object.values(record.bricks).sort((a, b) => a.position - b.position || (a.id < b.id ? -1 : 1)),
  };
}
