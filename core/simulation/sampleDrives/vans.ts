import { SOUND_BANK, SOUND_FRONT, SOUND_VEHICLE } from '../defaults.ts';
import type { BankParameters, VehicleParameters } from '../vehicle.ts';

// The vans of a courier depot of our own invention: all of one make that does not exist, 2.2 litres, four cylinders.

const VAN: VehicleParameters = { ...SOUND_VEHICLE, litres: 2.2 };

function vanWith(bank: Partial<BankParameters>, capacityG: number): VehicleParameters {
  const converter = { ...SOUND_BANK.converter, capacityG };
  return { ...VAN, banks: [{ ...SOUND_BANK, converter, ...bank }] };
}

/** Van 14 as it came: the storage is gone. */
export const VAN_14_BEFORE = vanWith({}, 0.045);

/** Van 14 with its replacement. */
export const VAN_14_AFTER = vanWith({}, 1.4);

/** Van 9: 120,000 km, sound. */
export const VAN_9 = vanWith({ mixture: { ...SOUND_BANK.mixture, error: -1, learned: 0.8 } }, 0.85);

/** Van 21: a sound converter, a lazy front sensor, and a leak at the flange ahead of the rear sensor. */
export const VAN_21 = vanWith(
  {
    front: { kind: 'switching', cell: { ...SOUND_FRONT, gasLagS: 0.25, fallLagS: 0.75, riseLagS: 0.5, span: 0.82 } },
    control: { ...SOUND_BANK.control, jump: 2.4, ramp: 5.5 },
    leaks: { aheadOfFront: 0, aheadOfRear: 0.045, beforeConverter: false, pulseHz: 2.5 },
  },
  0.6,
);

/** Van 17: the oldest of them; its converter stores a little. */
export const VAN_17 = vanWith({ control: { ...SOUND_BANK.control, jump: 1.6, rearGain: 1 } }, 0.16);
