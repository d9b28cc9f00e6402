import { codesOf } from '../../conditions/codeGroups.ts';
import { listed } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** The monitor's own verdict: a reason to look, not proof. It counts once, whatever the number of windows. */
export const catalystCode: ReasonRule = {
  id: 'catalystCode',
  look({ troubleCodes, bank }) {
    // P042x speaks of bank 1, P043x of bank 2 (SAE J2012, check 1.52).
    const of = bank === 2 ? 'P043' : 'P042';
    const codes = codesOf(troubleCodes, 'catalyst').filter((code) => code.startsWith(of));
    if (codes.length === 0) return null;
    return { value: 1, detail: `The vehicle's own monitor has set ${listed(codes)}: a reason to look, not proof.` };
  },
};
