import type { Share } from '../units/quantities.ts';
import type { Interval } from './exactIntervals.ts';
import { median } from './quantile.ts';

/** A rank test of two lists. */
export interface ShiftTest {
  /** Pairs in which the first list is the higher one; ties count one half. */
  readonly u: number;
  readonly twoSided: number;
  readonly greater: number;
  /** Median of all differences first minus second (Hodges and Lehmann). */
  readonly shift: number;
  /** Interval of the shift by ordered differences, at least of the confidence asked. */
  readonly interval: Interval;
}

/** Longer lists are refused: their exact distribution is not worth its time, and two windows have fewer blocks. */
const MOST = 200;

/**
 * Whether one list of independent values lies higher than another, by the exact distribution of Mann and Whitney's
 * count without ties (Hollander and Wolfe 1973; checks 6.22, 6.23). With ties it is a close approximation. Empty lists
 * or lists beyond 200 values give null.
 */
export function mannWhitney(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  confidence: Share = 0.95,
): ShiftTest | null {
  const m = first.length;
  const n = second.length;
  if (m === 0 || n === 0 || m > MOST || n > MOST) return null;
  const differences = new Float64Array(m * n);
  let u = 0;
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < n; j++) {
      const difference = (first[i] ?? 0) - (second[j] ?? 0);
      differences[i * n + j] = difference;
      u += difference > 0 ? 1 : difference === 0 ? 0.5 : 0;
    }
  }
  differences.sort();
  const chances = countDistribution(m, n);
  const atMost = cumulative(chances, Math.floor(u));
  const atLeast = 1 - cumulative(chances, Math.ceil(u) - 1);
  return {
    u,
    greater: atLeast,
    twoSided: Math.min(1, 2 * Math.min(atMost, atLeast)),
    shift: median(differences),
    interval: orderedLimits(differences, chances, confidence),
  };
}

/** Chance of each value 0..m*n of the count when nothing differs: Mann and Whitney's recurrence, one value at a time. */
function countDistribution(m: number, n: number): Float64Array {
  // counts[j][u]: ways for the values of the first list placed so far, with j of the second list below the next.
  let rows: Float64Array[] = Array.from({ length: n + 1 }, () => unit(m * n + 1));
  for (let i = 1; i <= m; i++) {
    const next: Float64Array[] = [];
    for (let j = 0; j <= n; j++) {
      // The highest of i + j values is one of the first list (it beats j of the second) or one of the second.
      const fromFirst = rows[j] ?? unit(m * n + 1);
      const fromSecond = next[j - 1];
      const share = i / (i + j);
      const row = new Float64Array(m * n + 1);
      for (let u = 0; u < row.length; u++) {
        const a = u >= j ? (fromFirst[u - j] ?? 0) : 0;
        row[u] = share * a + (fromSecond ? (1 - share) * (fromSecond[u] ?? 0) : 0);
      }
      next.push(row);
    }
    rows = next;
  }
  return rows[n] ?? unit(1);
}

function unit(length: number): Float64Array {
  const row = new Float64Array(length);
  row[0] = 1;
  return row;
}

function cumulative(chances: Float64Array, last: number): number {
  let sum = 0;
  for (let i = 0; i <= Math.min(last, chances.length - 1); i++) sum += chances[i] ?? 0;
  return Math.min(1, sum);
}

/** The k-th lowest and k-th highest of the ordered values, with k as large as the confidence allows. */
function orderedLimits(ordered: Float64Array, chances: Float64Array, confidence: Share): Interval {
  const tail = (1 - confidence) / 2;
  let k = 0;
  let sum = 0;
  while (k < ordered.length / 2 && sum + (chances[k] ?? 0) <= tail) {
    sum += chances[k] ?? 0;
    k++;
  }
  if (k === 0) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return [ordered[k - 1] ?? Number.NaN, ordered[ordered.length - k] ?? Number.NaN];
}
