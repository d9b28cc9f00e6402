import type { BankParameters, FrontSensor } from '../../vehicle.ts';
import type { ZirconiaParameters } from '../../zirconia.ts';
import type { MisleadingFault } from './misleadingFault.ts';

/** Faults of the front sensor. */
export const FRONT_FAULTS: readonly MisleadingFault[] = [
  {
    id: 'lazyFront',
    words: 'front sensor lazy',
    blockers: ['frontLazy', 'frontCode'],
    codes: ['P0133'],
    needs: 'switching',
    apply: (bank, random) =>
      withFront(bank, {
        gasLagS: random.between(0.15, 0.45),
        fallLagS: random.between(0.4, 1.3),
        riseLagS: random.between(0.25, 0.9),
      }),
  },
  {
    id: 'weakFront',
    words: 'front sensor with a small swing',
    blockers: ['frontWeak', 'frontNotSwitching', 'frontCode'],
    codes: ['P0131'],
    needs: 'switching',
    apply: (bank, random) => withFront(bank, { span: random.between(0.3, 0.5), offsetV: random.between(-0.08, 0.08) }),
  },
  {
    id: 'contaminatedFront',
    words: 'front sensor poisoned: slow, and switching beside lambda 1',
    blockers: ['frontLazy', 'frontWeak', 'frontNotSwitching', 'frontCode', 'mixtureOff', 'trimsOut', 'mixtureCode'],
    codes: ['P0171', 'P0133'],
    needs: 'switching',
    apply: (bank, random) =>
      withFront(bank, {
        shift: (random.chance(0.5) ? 1 : -1) * random.between(0.012, 0.03),
        gasLagS: random.between(0.1, 0.3),
        fallLagS: random.between(0.25, 0.7),
        riseLagS: random.between(0.2, 0.5),
        span: random.between(0.6, 0.85),
      }),
  },
];

function withFront(bank: BankParameters, change: Partial<ZirconiaParameters>): BankParameters {
  if (bank.front.kind !== 'switching') return bank;
  const front: FrontSensor = { kind: 'switching', cell: { ...bank.front.cell, ...change } };
  return { ...bank, front };
}
