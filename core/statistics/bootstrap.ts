import type { Share } from '../units/quantities.ts';
import type { Interval } from './exactIntervals.ts';
import { quantileSorted } from './quantile.ts';

/** Draws with replacement from `blocks` blocks: row r holds how often each block was drawn in resample r. */
export interface Resamples {
  readonly blocks: number;
  readonly draws: number;
  /** draws * blocks entries, row after row; each row sums to `blocks`. */
  readonly times: Uint16Array;
}

/**
 * Resamples of blocks (Künsch 1989: whole blocks are drawn, so that what is alike within a block stays together).
 * `uniform` is the passed-in source of chance. One set serves every measure of a window, which keeps their intervals
 * consistent with each other.
 */
export function drawBlocks(blocks: number, draws: number, uniform: () => number): Resamples {
  const times = new Uint16Array(blocks * draws);
  for (let r = 0; r < draws; r++) {
    for (let i = 0; i < blocks; i++) {
      const at = r * blocks + Math.min(blocks - 1, Math.floor(uniform() * blocks));
      times[at] = (times[at] ?? 0) + 1;
    }
  }
  return { blocks, draws, times };
}

/**
 * Percentile interval of a statistic over resamples. `statistic` gets how often each block counts (length `blocks`)
 * and may give NaN for a resample that says nothing; such are left out. Null where fewer than half of them say something.
 */
export function percentileInterval(
  { blocks, draws, times }: Resamples,
  statistic: (times: Uint16Array) => number,
  confidence: Share = 0.95,
): Interval | null {
  const found: number[] = [];
  for (let r = 0; r < draws; r++) {
    const value = statistic(times.subarray(r * blocks, (r + 1) * blocks));
    if (Number.isFinite(value)) found.push(value);
  }
  if (found.length < draws / 2) return null;
  const sorted = Float64Array.from(found).sort();
  const tail = (1 - confidence) / 2;
  return [quantileSorted(sorted, tail), quantileSorted(sorted, 1 - tail)];
}
