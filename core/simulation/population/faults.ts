import type { Random } from '../random.ts';
import type { BankParameters, FrontSensor, VehicleParameters } from '../vehicle.ts';
import type { ZirconiaParameters } from '../zirconia.ts';

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

/** Faults of the test, not of the car: the drive and the start temperature carry them. */
export const TEST_FAULTS = ['coldConverter', 'idleOnly'] as const;

const keep = (bank: BankParameters) => bank;

export const FAULTS: readonly MisleadingFault[] = [
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
    blockers: ['leak', 'richBehind', 'trimsOut', 'mixtureCode', 'mixtureOff'],
    codes: ['P0171'],
    needs: 'any',
    apply: (bank, random) => ({ ...bank, leaks: { ...bank.leaks, aheadOfFront: random.logBetween(0.12, 0.45) } }),
  },
  {
    id: 'misfire',
    words: 'misfire',
    blockers: ['misfire', 'richBehind', 'trimsOut'],
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
  {
    id: 'frontRearExchanged',
    words: 'connectors of front and rear sensor exchanged',
    blockers: ['sensorsExchanged'],
    codes: [],
    needs: 'switching',
    apply: keep,
  },
  {
    id: 'banksExchanged',
    words: 'front sensors of the two banks exchanged',
    blockers: ['sensorsExchanged'],
    codes: ['P0040'],
    needs: 'twoBanks',
    apply: keep,
  },
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
    apply: keep,
  },
];

function withFront(bank: BankParameters, change: Partial<ZirconiaParameters>): BankParameters {
  if (bank.front.kind !== 'switching') return bank;
  const front: FrontSensor = { kind: 'switching', cell: { ...bank.front.cell, ...change } };
  return { ...bank, front };
}

function withRear(bank: BankParameters, change: Partial<ZirconiaParameters>): BankParameters {
  return { ...bank, rear: { ...bank.rear, ...change } };
}

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

/** How the whole vehicle carries a fault that lies in its harness. */
export function exchangedOf(faultId: string | null): VehicleParameters['exchanged'] {
  if (faultId === 'frontRearExchanged') return 'frontRear';
  return faultId === 'banksExchanged' ? 'banks' : 'none';
}
