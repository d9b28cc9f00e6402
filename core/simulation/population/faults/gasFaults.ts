import type { Random } from '../../random.ts';
import type { BankParameters } from '../../vehicle.ts';
import type { MisleadingFault } from './misleadingFault.ts';

/** Faults of what flows through: leaks, misfire, mixture. */
export const GAS_FAULTS: readonly MisleadingFault[] = [
  {
    id: 'leakAheadOfRear',
    words: 'exhaust leak ahead of the rear sensor',
    blockers: ['leak'],
    codes: [],
    needs: 'any',
    apply: (bank, random) => ({
      ...bank,
      leaks: { ...bank.leaks, aheadOfRear: random.logBetween(0.08, 0.4), beforeConverter: random.chance(0.3) },
    }),
  },
  {
    id: 'leakAheadOfFront',
    words: 'exhaust leak ahead of the front sensor',
    blockers: ['leak', 'richBehind', 'frontDisturbed', 'trimsOut', 'mixtureCode', 'mixtureOff'],
    codes: ['P0171'],
    needs: 'any',
    apply: (bank, random) => ({ ...bank, leaks: { ...bank.leaks, aheadOfFront: random.logBetween(0.12, 0.45) } }),
  },
  {
    id: 'misfire',
    words: 'misfire',
    blockers: ['misfire', 'frontDisturbed', 'richBehind', 'trimsOut'],
    codes: ['P0300', 'P0303'],
    needs: 'any',
    apply: (bank, random) => ({ ...bank, mixture: { ...bank.mixture, misfire: random.logBetween(0.03, 0.15) } }),
  },
  {
    id: 'runsRich',
    words: 'runs rich beyond what the trims can mend',
    blockers: ['trimsOut', 'openLoop', 'mixtureOff', 'frontNotSwitching', 'mixtureCode', 'richBehind'],
    codes: ['P0172'],
    needs: 'any',
    apply: (bank, random) => farOut(bank, random, 1),
  },
  {
    id: 'runsLean',
    words: 'runs lean beyond what the trims can mend',
    blockers: ['trimsOut', 'openLoop', 'mixtureOff', 'frontNotSwitching', 'mixtureCode'],
    codes: ['P0171'],
    needs: 'any',
    apply: (bank, random) => farOut(bank, random, -1),
  },
];

/** Either emergency running in open loop, or trims at narrow limits that cannot reach. */
function farOut(bank: BankParameters, random: Random, sign: 1 | -1): BankParameters {
  if (random.chance(0.4)) {
    const error = sign * random.between(4, 12);
    return { ...bank, mixture: { ...bank.mixture, openLoopFault: true, error, learned: 0 } };
  }
  const error = sign * random.between(30, 42);
  return {
    ...bank,
    mixture: { ...bank.mixture, error, learned: -sign * 12 },
    control: { ...bank.control, shortLimit: 12, longLimit: 12 },
  };
}
