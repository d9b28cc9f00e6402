import type { BankParameters } from '../../vehicle.ts';
import type { ZirconiaParameters } from '../../zirconia.ts';
import type { MisleadingFault } from './misleadingFault.ts';

/** Faults of the rear sensor. */
export const REAR_FAULTS: readonly MisleadingFault[] = [
  {
    id: 'deadRear',
    words: 'rear sensor dead: stays at the circuit bias',
    blockers: ['rearNotProven', 'rearCode'],
    codes: ['P0140'],
    needs: 'any',
    apply: (bank) => withRear(bank, { health: 'dead' }),
  },
  {
    id: 'stuckRear',
    words: 'rear sensor stuck at a voltage',
    blockers: ['rearNotProven', 'rearCode'],
    codes: ['P0137'],
    needs: 'any',
    apply: (bank, random) =>
      withRear(bank, {
        health: 'stuck',
        stuckV: random.chance(0.5) ? random.between(0.02, 0.25) : random.between(0.55, 0.85),
      }),
  },
  {
    id: 'slowRear',
    words: 'rear sensor slow',
    blockers: ['rearNotProven', 'rearCode'],
    codes: ['P0139'],
    needs: 'any',
    apply: (bank, random) => {
      const fallLagS = random.logBetween(1.5, 5);
      return withRear(bank, { fallLagS, riseLagS: fallLagS * random.between(0.5, 1), gasLagS: 0.3 });
    },
  },
];

function withRear(bank: BankParameters, change: Partial<ZirconiaParameters>): BankParameters {
  return { ...bank, rear: { ...bank.rear, ...change } };
}
