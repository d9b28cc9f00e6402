import { remember } from '../signal/remember.ts';
import { type BlockHistogram, blockHistogram } from './blockHistogram.ts';
import { type Blocks, blocksOf } from './blocks.ts';
import type { SensorSeries, WindowData } from './measure.ts';
import { pathBetween } from './pathOf.ts';
import { slowAndFast } from './slowAndFast.ts';

/** What each block of a window holds of one sensor: everything its intervals are made from. One entry a block. */
export interface SensorBlocks {
  readonly count: Float64Array;
  readonly sum: Float64Array;
  /** Squares of the deviations from the window's mean. */
  readonly squares: Float64Array;
  readonly rich: Float64Array;
  readonly path: Float64Array;
  readonly all: BlockHistogram;
  readonly slow: BlockHistogram;
  readonly fast: BlockHistogram;
}

/** The front sensor's blocks; null without a front sensor or too short a window. */
export const frontBlocks = remember((data: WindowData) => sensorBlocks(data.upstream, blocksOf(data)));

/** The rear sensor's blocks; null without a rear sensor or too short a window. */
export const rearBlocks = remember((data: WindowData) => sensorBlocks(data.downstream, blocksOf(data)));

function sensorBlocks(sensor: SensorSeries | null, blocks: Blocks | null): SensorBlocks | null {
  if (!sensor || !blocks || sensor.series.values.length === 0) return null;
  const { timesS, values } = sensor.series;
  const room = () => new Float64Array(blocks.stretches.length);
  const [count, sum, squares, rich, path] = [room(), room(), room(), room(), room()];
  const mean = values.reduce((total, value) => total + value, 0) / values.length;
  let i = 0;
  blocks.stretches.forEach(({ endS }, b) => {
    const first = i;
    const isLast = b === blocks.stretches.length - 1;
    for (; i < values.length && (isLast || (timesS[i] ?? 0) < endS); i++) {
      const value = values[i] ?? 0;
      sum[b] = (sum[b] ?? 0) + value;
      squares[b] = (squares[b] ?? 0) + (value - mean) ** 2;
      if (value > 0.45) rich[b] = (rich[b] ?? 0) + 1;
    }
    count[b] = i - first;
    path[b] = pathBetween(sensor, first, i);
  });
  const { slowPart, fastPart } = slowAndFast(sensor);
  return {
    count,
    sum,
    squares,
    rich,
    path,
    all: blockHistogram(sensor.series, blocks),
    slow: blockHistogram(slowPart, blocks),
    fast: blockHistogram(fastPart, blocks),
  };
}
