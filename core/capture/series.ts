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

/** So many values say where a sensor rests; the share of a quantile among them is true to 0.2 %. */
const MOST_PLACES = 400_000;

/**
 * Values of a channel for which something holds, in order, without their times; a value that is missing is NaN. For the
 * levels of a whole capture: a channel of more than 400,000 samples is looked at in so many places, evenly spread. The
 * engine's own filter takes twenty times as long.
 */
export function valuesWhere({ values }: Channel, holds: (value: number) => boolean): Float64Array {
  const stride = Math.max(1, Math.ceil(values.length / MOST_PLACES));
  let length = 0;
  for (let i = 0; i < values.length; i += stride) if (holds(values[i] ?? Number.NaN)) length++;
  const kept = new Float64Array(length);
  let at = 0;
  for (let i = 0; i < values.length; i += stride) {
    const value = values[i] ?? Number.NaN;
    if (holds(value)) kept[at++] = value;
  }
  return kept;
}
