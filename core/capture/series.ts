import type { Seconds } from '../units/quantities.ts';
import type { Channel } from './channel.ts';
import { firstAtOrAfter, timeAt } from './timeBase.ts';

/**
 * The finite samples of one channel in a stretch: timesS ascending, values finite, both of the same length. This is
 * what every kernel in core/signal works on, so that none of them has to think about gaps, bases or missing values.
 */
export interface Series {
  readonly timesS: Float64Array;
  readonly values: Float64Array;
}

/**
 * Samples of `channel` from startS up to and including endS, missing values left out. A reversed or empty stretch, or
 * one outside the channel, gives a series of length 0. Length is at most the samples in the stretch.
 */
export function seriesOf(channel: Channel, startS: Seconds, endS: Seconds): Series {
  const first = firstAtOrAfter(channel.time, startS);
  let last = firstAtOrAfter(channel.time, endS);
  while (timeAt(channel.time, last) <= endS) last++;
  const room = Math.max(0, last - first);
  const timesS = new Float64Array(room);
  const values = new Float64Array(room);
  let length = 0;
  for (let i = first; i < last; i++) {
    const value = channel.values[i] ?? Number.NaN;
    if (!Number.isFinite(value)) continue;
    timesS[length] = timeAt(channel.time, i);
    values[length] = value;
    length++;
  }
  return { timesS: timesS.subarray(0, length), values: values.subarray(0, length) };
}
