import type { Random } from '../../random.ts';
import type { BankParameters } from '../../vehicle.ts';

/** Something that misleads whoever looks at the two sensors. */
export interface MisleadingFault {
  readonly id: string;
  readonly words: string;
  /** Ids of blockers (core/findings/blockerRules.ts) that name it rightly: any of them leads the person to it. */
  readonly blockers: readonly string[];
  /** Trouble codes an engine computer may have set for it; sometimes. */
  readonly codes: readonly string[];
  /** Which vehicles can have it. */
  readonly needs: 'any' | 'switching' | 'twoBanks';
  /** Puts the fault into the bank; strong enough to mislead. */
  apply(bank: BankParameters, random: Random): BankParameters;
}
