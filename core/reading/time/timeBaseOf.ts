import type { TimeBase } from '../../capture/timeBase.ts';
import { simplestStep } from './simplestStep.ts';

/** Seconds are compared and cut to this: finer than any instrument's clock, coarser than the rounding of a sum. */
const TOLERANCE_S = 1e-9;
const TICKS = 1e9;

/**
 * Counts `timesS` from `zeroS`, which must not be larger than the first, and describes the base by start and step where
 * every sample lies within a nanosecond of it. The array is changed, and kept where the base is listed.
 */
export function timeBaseOf(timesS: Float64Array, zeroS: number): TimeBase {
  const length = timesS.length;
  // Beside the seconds since 1970 a number has room for a quarter of a microsecond.
  const ticks = Math.abs(zeroS) > 1e7 ? 1e6 : TICKS;
  if (zeroS !== 0) for (let i = 0; i < length; i++) timesS[i] = roundTime((timesS[i] ?? 0) - zeroS, ticks);
  const startS = timesS[0] ?? 0;
  if (length < 3) return { kind: 'listed', timesS };
  const stepS = stepOf(timesS);
  for (let i = 0; i < length; i++) {
    if (Math.abs((timesS[i] ?? 0) - (startS + i * stepS)) > TOLERANCE_S) return { kind: 'listed', timesS };
  }
  return stepS > 0 ? { kind: 'regular', startS, stepS, length } : { kind: 'listed', timesS };
}

/** A time without the noise that a subtraction leaves in its last bits. */
export function roundTime(timeS: number, ticks = TICKS): number {
  return Math.abs(timeS) < 4e6 ? Math.round(timeS * ticks) / ticks : timeS;
}

/** The mean step, as the short decimal number that it nearly is. */
function stepOf(timesS: Float64Array): number {
  const length = timesS.length;
  const mean = ((timesS[length - 1] ?? 0) - (timesS[0] ?? 0)) / (length - 1);
  return simplestStep(mean, length, TOLERANCE_S / 2);
}
