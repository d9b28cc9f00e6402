// Edits of the surface temperatures taken by hand.

import type { Reading } from '../schema.ts';
import type { Edit } from './edit.ts';
import { withChanged, withEntry, without } from './entries.ts';

/** Adds a pair of temperatures. */
export function addReading(reading: Reading): Edit {
  return {
    name: 'add temperature reading',
    apply: (record) => ({ ...record, readings: withEntry(record.readings, reading) }),
  };
}

/** Changes some of a reading; what is not given stays. */
export function changeReading(id: string, changed: Partial<Omit<Reading, 'id'>>): Edit {
  return {
    name: 'change temperature reading',
    apply: (record) => ({ ...record, readings: withChanged(record.readings, id, (one) => ({ ...one, ...changed })) }),
  };
}

/** Removes a reading. */
export function removeReading(id: string): Edit {
  return {
    name: 'delete temperature reading',
    apply: (record) => ({ ...record, readings: without(record.readings, (reading) => reading.id === id) }),
  };
}
