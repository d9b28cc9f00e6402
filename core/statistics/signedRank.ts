import { median } from './quantile.ts';

/** A signed-rank test of differences. */
export interface SignedRankTest {
  /** Sum of the ranks of the positive differences. */
  readonly v: number;
  readonly greater: number;
  readonly twoSided: number;
  /** Median of the means of all pairs of differences, each with itself too (Walsh averages). */
  readonly centre: number;
}

const MOST = 60;

/**
 * Whether differences of pairs lie above 0, by the exact distribution of Wilcoxon's signed-rank sum (Hollander and
 * Wolfe 1973; check 6.24). Zeros are left out; ties get mean ranks and make it a close approximation. No differences,
 * or more than 60, give null.
 */
export function signedRank(differences: ArrayLike<number>): SignedRankTest | null {
  const kept = Array.from(differences).filter((value) => value !== 0);
  const n = kept.length;
  if (n === 0 || n > MOST) return null;
  const ranks = ranksOf(kept.map(Math.abs));
  const v = kept.reduce((sum, value, i) => sum + (value > 0 ? (ranks[i] ?? 0) : 0), 0);
  const most = (n * (n + 1)) / 2;
  let ways = new Float64Array(most + 1);
  ways[0] = 1;
  for (let rank = 1; rank <= n; rank++) {
    const next = ways.slice();
    for (let s = rank; s <= most; s++) next[s] = (next[s] ?? 0) + (ways[s - rank] ?? 0);
    ways = next;
  }
  const total = 2 ** n;
  const tail = (from: number, to: number) => ways.slice(from, to + 1).reduce((sum, way) => sum + way, 0) / total;
  const atLeast = tail(Math.ceil(v), most);
  return {
    v,
    greater: atLeast,
    twoSided: Math.min(1, 2 * Math.min(atLeast, tail(0, Math.floor(v)))),
    centre: median(kept.flatMap((a, i) => kept.slice(i).map((b) => (a + b) / 2))),
  };
}

/** Ranks from 1, equal values sharing the mean of theirs. */
function ranksOf(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return values.map((value) => {
    const first = sorted.indexOf(value);
    return (first + sorted.lastIndexOf(value)) / 2 + 1;
  });
}
