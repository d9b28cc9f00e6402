import type { BankParameters, VehicleParameters } from './vehicle.ts';
import type { ZirconiaParameters } from './zirconia.ts';

// A middling two-litre vehicle of our own invention, everything sound. Scenarios change what they are about.

export const SOUND_FRONT: ZirconiaParameters = {
  temperatureC: 680,
  width: 0.0022,
  shift: 0,
  gasLagS: 0.02,
  fallLagS: 0.045,
  riseLagS: 0.03,
  span: 1,
  offsetV: 0,
  noiseV: 0.004,
  health: 'works',
  stuckV: 0.45,
};

export const SOUND_REAR: ZirconiaParameters = {
  ...SOUND_FRONT,
  temperatureC: 620,
  width: 0.0028,
  gasLagS: 0.06,
  fallLagS: 0.14,
  riseLagS: 0.09,
  noiseV: 0.003,
};

export const SOUND_BANK: BankParameters = {
  control: {
    kind: 'relay',
    jump: 1.3,
    ramp: 3.2,
    dither: 0.02,
    ditherPeriodS: 1.2,
    ditherSquare: true,
    rearGain: 2.2,
    rearGoalV: 0.67,
    purge: 9,
    shortLimit: 25,
    longLimit: 25,
    longTauS: 45,
  },
  front: { kind: 'switching', cell: SOUND_FRONT },
  rear: SOUND_REAR,
  converter: {
    capacityG: 1,
    storeRate: 160,
    releaseRate: 90,
    lightOffC: 290,
    lightOffWidthK: 16,
    equilibriumSpan: 0.006,
  },
  secondBrick: null,
  exhaust: {
    frontLitres: 2.4,
    rearLitres: 3,
    mixingS: 0.03,
    startC: 380,
    idleGasC: 400,
    holdGasC: 545,
    warmTauS: 55,
    exothermK: 35,
  },
  mixture: {
    error: 1.5,
    drift: 0.5,
    transient: 3,
    unevenness: 0.004,
    misfire: 0,
    openLoopFault: false,
    learned: -1,
  },
  leaks: { aheadOfFront: 0, aheadOfRear: 0, beforeConverter: false, pulseHz: 3 },
};

export const SOUND_VEHICLE: VehicleParameters = {
  litres: 2,
  engine: {
    idleLoad: 21,
    holdLoad: 22,
    coolantGoalC: 90,
    coolantTauS: 170,
    cutAbove: 1500,
    purgeS: 9,
    rpmWander: 14,
    loadWander: 0.025,
  },
  banks: [SOUND_BANK],
  exchanged: 'none',
};
