import { listed } from '../words/numbers.ts';
import { codesOf } from './codeGroups.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

export const noMisfireCode: Condition = {
  id: 'noMisfireCode',
  words: 'No misfire code',
  help: 'A misfire sends unburned fuel and air into the exhaust: the sensors read wrong, and the converter overheats.',
  blocker: 'misfire',
  kinds: 'all',
  judge({ troubleCodes }) {
    const codes = codesOf(troubleCodes, 'misfire');
    if (codes.length > 0)
      return notMet(
        this.id,
        `${codes.length > 1 ? 'Trouble codes' : 'Trouble code'} ${listed(codes)}: misfire comes first.`,
      );
    if (troubleCodes.length === 0) return notRecorded(this.id, 'No trouble codes were recorded with the vehicle.');
    return met(this.id, 'None of the recorded trouble codes.');
  },
};
