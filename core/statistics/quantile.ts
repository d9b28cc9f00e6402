import type { Share } from '../units/quantities.ts';
import { select } from './select.ts';

/**
 * Quantile of values that are already sorted ascending, by linear interpolation between order statistics: definition
 * 7 of Hyndman and Fan (The American Statistician 50 (1996) 361), the default of R and of numpy.
 * `share` is cut to 0..1. An empty list gives NaN.
 */
export function quantileSorted(sorted: ArrayLike<number>, share: Share): number {
  const last = sorted.length - 1;
  if (last < 0) return Number.NaN;
  const place = Math.min(1, Math.max(0, share)) * last;
  const below = Math.floor(place);
  const low = sorted[below] ?? Number.NaN;
  const high = sorted[Math.min(last, below + 1)] ?? Number.NaN;
  return low + (high - low) * (place - below);
}

/** A sorted copy of finite values, ascending. */
export function sortedCopy(values: ArrayLike<number>): Float64Array {
  return Float64Array.from(values).sort();
}

/** Quantiles of finite values in any order, by the same definition, without sorting them all; NaN for no values. */
export function quantilesOf(values: ArrayLike<number>, shares: readonly Share[]): number[] {
  const last = values.length - 1;
  if (last < 0) return shares.map(() => Number.NaN);
  const copy = new Float64Array(values);
  return shares.map((share) => {
    const place = Math.min(1, Math.max(0, share)) * last;
    const below = Math.floor(place);
    select(copy, below);
    const low = copy[below] ?? Number.NaN;
    return low + (leastFrom(copy, Math.min(last, below + 1)) - low) * (place - below);
  });
}

function leastFrom(values: Float64Array, from: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = from; i < values.length; i++) least = Math.min(least, values[i] ?? least);
  return least;
}

/** Median of finite values in any order; NaN for none. */
export function median(values: ArrayLike<number>): number {
  return quantilesOf(values, [0.5])[0] ?? Number.NaN;
}

/** Lowest and highest value with the given share left out at each end, and the middle; NaN for no values. */
export interface RobustRange {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/**
 * The range that leaves out `tail` of the values at each end, so that a spike or a drop-out does not set it. 5 % is
 * enough for an oxygen sensor, which spends far more than that at either end of its swing (common practice, no source).
 */
export function robustRange(values: ArrayLike<number>, tail: Share = 0.05): RobustRange {
  const [low = Number.NaN, middle = Number.NaN, high = Number.NaN] = quantilesOf(values, [tail, 0.5, 1 - tail]);
  return { low, middle, high };
}
