import type { Share } from '../units/quantities.ts';
import { betaQuantile, incompleteBeta } from './incompleteBeta.ts';
import { chiSquareQuantile } from './incompleteGamma.ts';

/** Lower and upper limit. */
export type Interval = readonly [number, number];

/**
 * Interval for a proportion of which `hits` of `trials` were seen, after Clopper and Pearson (NIST/SEMATECH
 * e-Handbook 7.2.4.1): never covers less than promised. 0 <= hits <= trials, both whole. No trials give 0..1.
 */
export function clopperPearson(hits: number, trials: number, confidence: Share = 0.95): Interval {
  const tail = (1 - confidence) / 2;
  return [
    hits <= 0 ? 0 : betaQuantile(tail, hits, trials - hits + 1),
    hits >= trials ? 1 : betaQuantile(1 - tail, hits + 1, trials - hits),
  ];
}

/** Interval for the mean of a Poisson count of which `count` was seen, after Garwood (1936), by chi-square quantiles. */
export function garwood(count: number, confidence: Share = 0.95): Interval {
  const tail = (1 - confidence) / 2;
  return [count <= 0 ? 0 : chiSquareQuantile(tail, 2 * count) / 2, chiSquareQuantile(1 - tail, 2 * count + 2) / 2];
}

/**
 * Interval for the ratio of two Poisson means over equal times: given the sum, the first count is binomial, so the
 * limits are p / (1 - p) of the Clopper-Pearson limits (check 6.12). The upper limit is Infinity where `second` is 0.
 */
export function ratioOfCounts(first: number, second: number, confidence: Share = 0.95): Interval {
  const [low, high] = clopperPearson(first, first + second, confidence);
  return [low / (1 - low), high >= 1 ? Number.POSITIVE_INFINITY : high / (1 - high)];
}

/**
 * Interval for a median from ordered values, by order statistics: the k-th lowest and k-th highest, with k as large as
 * the binomial with one half allows. Never covers less than promised. Too few values for the confidence give null.
 */
export function medianInterval(sorted: ArrayLike<number>, confidence: Share = 0.95): Interval | null {
  const n = sorted.length;
  const tail = (1 - confidence) / 2;
  let k = 0;
  // P(at most k of n below the median) = 1 - I(1/2; k + 1, n - k).
  while (k < n / 2 && 1 - incompleteBeta(0.5, k + 1, n - k) <= tail) k++;
  if (k === 0) return null;
  return [sorted[k - 1] ?? Number.NaN, sorted[n - k] ?? Number.NaN];
}
