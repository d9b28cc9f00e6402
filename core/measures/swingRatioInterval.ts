import type { Interval } from '../statistics/exactIntervals.ts';
import { blockInterval } from './blocks.ts';
import type { WindowData } from './measure.ts';
import { frontBlocks, rearBlocks } from './sensorBlocks.ts';

/** Interval of the rear swing over the front swing, of the whole traces or of their fast parts; both drawn together. */
export function swingRatioInterval(data: WindowData, part: 'all' | 'fast'): Interval | null {
  const ahead = frontBlocks(data)?.[part];
  const behind = rearBlocks(data)?.[part];
  if (!ahead || !behind) return null;
  return blockInterval(
    data,
    (times) =>
      (behind.quantile(times, 0.95) - behind.quantile(times, 0.05)) /
      (ahead.quantile(times, 0.95) - ahead.quantile(times, 0.05)),
  );
}
