import type { MisleadingFault } from './misleadingFault.ts';

/** Faults of the test and not of the car: the drive carries them (planCase.ts). */
export const TEST_FAULTS: readonly MisleadingFault[] = [
  {
    id: 'coldConverter',
    words: 'converter not heated',
    blockers: ['coldConverter', 'coldEngine'],
    codes: [],
    needs: 'any',
    apply: (bank, random) => ({
      ...bank,
      exhaust: { ...bank.exhaust, startC: random.between(40, 160), warmTauS: random.between(120, 260) },
    }),
  },
  {
    id: 'idleOnly',
    words: 'nothing but idle recorded',
    blockers: ['idleOnly', 'noWindow'],
    codes: [],
    needs: 'any',
    apply: (bank) => bank,
  },
];
