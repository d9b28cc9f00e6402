import { listed } from '../words/numbers.ts';
import { codesOf } from './codeGroups.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

export const noRearSensorCode: Condition = {
  id: 'noRearSensorCode',
  words: 'No code of the rear sensor',
  help: 'A rear sensor or its heater that has a code of its own is repaired before a converter is judged.',
  blocker: 'rearCode',
  kinds: 'all',
  judge({ troubleCodes }) {
    const codes = codesOf(troubleCodes, 'rearSensor');
    if (codes.length > 0)
      return notMet(
        this.id,
        `${codes.length > 1 ? 'Trouble codes' : 'Trouble code'} ${listed(codes)}: the rear sensor or its heater comes first.`,
      );
    if (troubleCodes.length === 0) return notRecorded(this.id, 'No trouble codes were recorded with the vehicle.');
    return met(this.id, 'None of the recorded trouble codes.');
  },
};
