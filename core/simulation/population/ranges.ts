import type { Random } from '../random.ts';

/** Where a parameter may lie. `log` draws evenly in the logarithm. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly log?: boolean;
}

/**
 * 'inside' draws from the ranges. 'far' draws every parameter from the strips of 30 % beyond either end of its range:
 * cars that are odd in every respect at once. 'outside' does so for each parameter with probability one half.
 */
export type DrawMode = 'inside' | 'outside' | 'far';

/** How far beyond its range a parameter is drawn in the other modes: share of an end's size, or of the width. */
export const BEYOND = 0.3;

/**
 * Draws one parameter. Beyond its range one that is drawn in the logarithm (a size: a volume, a lag, a rate) lies from
 * low / 1.3 to low or from high to high * 1.3; any other (a level: a temperature, a voltage, a share) within 30 % of the
 * range's width of either end.
 */
export function draw({ low, high, log }: Range, random: Random, mode: DrawMode): number {
  const within = mode === 'inside' || (mode === 'outside' && random.chance(0.5));
  if (within) return log ? random.logBetween(low, high) : random.between(low, high);
  const width = (high - low) * BEYOND;
  if (random.chance(0.5)) return random.between(log ? low / (1 + BEYOND) : low - width, low);
  return random.between(high, log ? high * (1 + BEYOND) : high + width);
}

/**
 * Ranges of everything about the car that is not its converter's capacity. All are orders of magnitude from memory of
 * the trade unless a check is named: they are meant to be wide enough that real cars lie inside.
 */
export const CAR = {
  litres: { low: 1, high: 4.2, log: true },
  idleLoad: { low: 15, high: 27 },
  holdLoad: { low: 16, high: 30 },
  coolantGoalC: { low: 84, high: 99 },
  rpmWander: { low: 5, high: 32, log: true },
  loadWander: { low: 0.01, high: 0.055, log: true },
  purgeS: { low: 2, high: 10 },
  cutAbove: { low: 1350, high: 1900 },
} as const satisfies Record<string, Range>;

/** Fuel control (check 3.35: 0.5 to 3 Hz at 2000 to 2500 1/min, 1 to 5 % of lambda). */
export const CONTROL = {
  jump: { low: 0.6, high: 2.6, log: true },
  ramp: { low: 1.2, high: 6, log: true },
  /** Forced swing of a wideband control, half height, and its period (check 3.36). */
  dither: { low: 0.007, high: 0.035, log: true },
  ditherPeriodS: { low: 0.6, high: 3.2, log: true },
  rearGain: { low: 0.6, high: 4, log: true },
  rearGoalV: { low: 0.56, high: 0.74 },
  purge: { low: 4, high: 12 },
  longTauS: { low: 25, high: 90, log: true },
  /** Mixture before trims, per cent, and its drift. */
  error: { low: -5, high: 5 },
  drift: { low: 0.2, high: 0.9, log: true },
  transient: { low: 1, high: 6 },
  unevenness: { low: 0.001, high: 0.011, log: true },
} as const satisfies Record<string, Range>;

/** Pipes and bricks; volumes are for each litre of the bank's engine. */
export const EXHAUST = {
  frontVolume: { low: 0.5, high: 2.4, log: true },
  rearVolume: { low: 0.8, high: 2.6, log: true },
  mixingS: { low: 0.015, high: 0.06, log: true },
  idleGasC: { low: 370, high: 450 },
  holdGasC: { low: 480, high: 620 },
  warmTauS: { low: 30, high: 85, log: true },
  exothermK: { low: 10, high: 60 },
} as const satisfies Record<string, Range>;

/** Front sensor, sound (checks 4.11, 4.12, 4.30). */
export const FRONT = {
  temperatureC: { low: 600, high: 780 },
  width: { low: 0.0012, high: 0.0036, log: true },
  shift: { low: -0.002, high: 0.002 },
  gasLagS: { low: 0.01, high: 0.035, log: true },
  fallLagS: { low: 0.03, high: 0.075, log: true },
  riseLagS: { low: 0.02, high: 0.055, log: true },
  span: { low: 0.92, high: 1.03 },
  offsetV: { low: -0.015, high: 0.02 },
  noiseV: { low: 0.001, high: 0.008, log: true },
} as const satisfies Record<string, Range>;

/** Wideband front sensor. */
export const WIDEBAND = {
  lagS: { low: 0.04, high: 0.15, log: true },
  bias: { low: -0.004, high: 0.004 },
} as const satisfies Record<string, Range>;

/** Rear sensor, sound. */
export const REAR = {
  temperatureC: { low: 560, high: 740 },
  width: { low: 0.0018, high: 0.0042, log: true },
  shift: { low: -0.0015, high: 0.0015 },
  gasLagS: { low: 0.03, high: 0.12, log: true },
  fallLagS: { low: 0.08, high: 0.4, log: true },
  riseLagS: { low: 0.05, high: 0.28, log: true },
  span: { low: 0.92, high: 1.03 },
  offsetV: { low: -0.015, high: 0.02 },
  noiseV: { low: 0.001, high: 0.006, log: true },
} as const satisfies Record<string, Range>;

/** What a converter does beside its capacity (checks 3.30, 3.31). */
export const CONVERTER = {
  storeRate: { low: 80, high: 300, log: true },
  releaseShare: { low: 0.35, high: 0.9 },
  lightOffC: { low: 255, high: 330 },
  lightOffWidthK: { low: 10, high: 22 },
  equilibriumSpan: { low: 0.0025, high: 0.009, log: true },
} as const satisfies Record<string, Range>;
