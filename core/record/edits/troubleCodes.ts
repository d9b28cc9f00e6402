// Edits of the trouble codes that were found on the vehicle.

import type { TroubleCode } from '../schema.ts';
import type { Edit } from './edit.ts';
import { withChanged, withEntry, without } from './entries.ts';

/** Adds a trouble code. One that is on the vehicle already takes the new status instead of standing twice. */
export function addTroubleCode(found: TroubleCode): Edit {
  return {
    name: 'add trouble code',
    apply: (record) => {
      const known = Object.values(record.troubleCodes).find(({ code }) => code === found.code);
      const entry = known === undefined ? found : { ...known, status: found.status };
      return { ...record, troubleCodes: withEntry(record.troubleCodes, entry) };
    },
  };
}

/** Says how a code stands. */
export function setTroubleCodeStatus(id: string, status: TroubleCode['status']): Edit {
  return {
    name: 'change trouble code',
    apply: (record) => ({
      ...record,
      troubleCodes: withChanged(record.troubleCodes, id, (one) => ({ ...one, status })),
    }),
  };
}

/** Removes a trouble code. */
export function removeTroubleCode(id: string): Edit {
  return {
    name: 'delete trouble code',
    apply: (record) => ({ ...record, troubleCodes: without(record.troubleCodes, (one) => one.id === id) }),
  };
}
