import type { Share } from '../units/quantities.ts';
import type { Interval } from './exactIntervals.ts';
import { moments } from './moments.ts';
import { studentQuantile, studentTwoSided } from './studentT.ts';

/** A difference of means, tested. */
export interface MeanTest {
  /** Mean of the first list minus mean of the second. */
  readonly difference: number;
  readonly t: number;
  readonly degrees: number;
  /** Two-sided. */
  readonly p: number;
  readonly interval: Interval;
}

/**
 * Difference of two means without equal variances, after Welch (check 6.20). Both lists hold independent values, at
 * least two each; fewer, or no spread at all, give null.
 */
export function welch(first: ArrayLike<number>, second: ArrayLike<number>, confidence: Share = 0.95): MeanTest | null {
  const a = moments(first);
  const b = moments(second);
  if (a.count < 2 || b.count < 2) return null;
  const va = a.deviation ** 2 / a.count;
  const vb = b.deviation ** 2 / b.count;
  if (!(va + vb > 0)) return null;
  const degrees = (va + vb) ** 2 / (va ** 2 / (a.count - 1) + vb ** 2 / (b.count - 1));
  return meanTest(a.mean - b.mean, Math.sqrt(va + vb), degrees, confidence);
}

/** Mean of the differences of pairs (check 6.21). Lists of the same length, at least two pairs; else null. */
export function paired(first: ArrayLike<number>, second: ArrayLike<number>, confidence: Share = 0.95): MeanTest | null {
  if (first.length !== second.length || first.length < 2) return null;
  const differences = Float64Array.from(first, (value, i) => value - (second[i] ?? 0));
  const { mean, deviation, count } = moments(differences);
  return deviation > 0 ? meanTest(mean, deviation / Math.sqrt(count), count - 1, confidence) : null;
}

function meanTest(difference: number, error: number, degrees: number, confidence: Share): MeanTest {
  const t = difference / error;
  const reach = studentQuantile(1 - confidence, degrees) * error;
  return { difference, t, degrees, p: studentTwoSided(t, degrees), interval: [difference - reach, difference + reach] };
}
