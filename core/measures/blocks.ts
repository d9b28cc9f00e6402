import { remember } from '../signal/remember.ts';
import { drawBlocks, percentileInterval, type Resamples } from '../statistics/bootstrap.ts';
import type { Interval } from '../statistics/exactIntervals.ts';
import { seededUniform } from '../statistics/seededUniform.ts';
import type { Seconds } from '../units/quantities.ts';
import type { Stretch } from '../windows/window.ts';
import { likelySwitching } from './likelySwitching.ts';
import type { WindowData } from './measure.ts';

/** A window cut into even blocks, and how they are drawn again and again. */
export interface Blocks {
  readonly stretches: readonly Stretch[];
  readonly resamples: Resamples;
}

/** A block holds two front cycles and a second at least, so that blocks are nearly independent. */
const CYCLES = 2;
const LEAST_S: Seconds = 1;
const FEWEST = 6;
const MOST = 24;
const DRAWS = 200;
/** Any fixed number: the same window gives the same interval on every machine. */
const SEED = 1;

/** Blocks of a window for its intervals; null where it is too short for six. */
export const blocksOf = remember((data: WindowData): Blocks | null => {
  const { startS, endS } = data.window;
  const least = Math.max(LEAST_S, CYCLES / likelySwitching(data));
  const count = Math.min(MOST, Math.floor((endS - startS) / least));
  if (!(count >= FEWEST)) return null;
  const stepS = (endS - startS) / count;
  const stretches = Array.from({ length: count }, (_, i) => ({
    startS: startS + i * stepS,
    endS: startS + (i + 1) * stepS,
  }));
  return { stretches, resamples: drawBlocks(count, DRAWS, seededUniform(SEED)) };
});

/** Block bootstrap interval of a statistic that is made from how often each block counts. Null without blocks. */
export function blockInterval(data: WindowData, statistic: (times: Uint16Array) => number): Interval | null {
  const blocks = blocksOf(data);
  return blocks ? percentileInterval(blocks.resamples, statistic) : null;
}

/** A number of each block, added up as often as the block counts. */
export function sumOver(times: ArrayLike<number>, perBlock: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < times.length; i++) sum += (times[i] ?? 0) * (perBlock[i] ?? 0);
  return sum;
}
