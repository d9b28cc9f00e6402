import type { Series } from '../capture/series.ts';
import { lastAtOrBefore } from '../signal/valueAt.ts';
import type { Share } from '../units/quantities.ts';
import type { Blocks } from './blocks.ts';

/** Bins over the range of a sensor's values: 8 mV each for a full swing, finer than what an interval tells. */
const BINS = 128;

/** How a sensor's values are distributed in each block, in a form from which quantiles of any mix of blocks are quick. */
export interface BlockHistogram {
  /** Quantile of all blocks together, each counted `times` times; NaN where nothing counts. */
  quantile(times: ArrayLike<number>, share: Share): number;
}

/** Histogram of a series in each block. */
export function blockHistogram({ timesS, values }: Series, blocks: Blocks): BlockHistogram {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const width = high > low ? (high - low) / BINS : 1;
  /** Row b: how many values of block b lie below the upper edge of each bin. */
  const below = new Uint32Array(blocks.stretches.length * BINS);
  blocks.stretches.forEach(({ startS, endS }, b) => {
    const first = lastAtOrBefore(timesS, startS) + (b === 0 ? 0 : 1);
    const last = lastAtOrBefore(timesS, endS);
    for (let i = Math.max(0, first); i <= last; i++) {
      const bin = Math.min(BINS - 1, Math.floor(((values[i] ?? low) - low) / width));
      below[b * BINS + bin] = (below[b * BINS + bin] ?? 0) + 1;
    }
    for (let k = 1; k < BINS; k++) below[b * BINS + k] = (below[b * BINS + k] ?? 0) + (below[b * BINS + k - 1] ?? 0);
  });
  const countBelow = (times: ArrayLike<number>, bin: number): number => {
    let sum = 0;
    for (let b = 0; b < times.length; b++) sum += (times[b] ?? 0) * (below[b * BINS + bin] ?? 0);
    return sum;
  };
  return {
    quantile(times, share) {
      const total = countBelow(times, BINS - 1);
      if (total === 0) return Number.NaN;
      const wanted = share * total;
      let from = 0;
      let to = BINS - 1;
      while (from < to) {
        const middle = (from + to) >>> 1;
        if (countBelow(times, middle) >= wanted) to = middle;
        else from = middle + 1;
      }
      const before = from > 0 ? countBelow(times, from - 1) : 0;
      const here = countBelow(times, from) - before;
      return low + width * (from + (here > 0 ? Math.min(1, Math.max(0, (wanted - before) / here)) : 0.5));
    },
  };
}
