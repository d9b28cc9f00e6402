import { listed } from '../words/numbers.ts';
import { codesOf } from './codeGroups.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

export const noMixtureCode: Condition = {
  id: 'noMixtureCode',
  words: 'No mixture code',
  help: 'A code for a mixture that is too lean or too rich is cleared up before a converter is judged.',
  blocker: 'mixtureCode',
  kinds: 'all',
  judge({ troubleCodes }) {
    const codes = codesOf(troubleCodes, 'mixture');
    if (codes.length > 0)
      return notMet(
        this.id,
        `${codes.length > 1 ? 'Trouble codes' : 'Trouble code'} ${listed(codes)}: the mixture comes first.`,
      );
    if (troubleCodes.length === 0) return notRecorded(this.id, 'No trouble codes were recorded with the vehicle.');
    return met(this.id, 'None of the recorded trouble codes.');
  },
};
