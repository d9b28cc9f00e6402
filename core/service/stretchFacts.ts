import type { Channel } from '../capture/channel.ts';
import { firstAtOrAfter, sampleCount, timeAt } from '../capture/timeBase.ts';
import type { Seconds } from '../units/quantities.ts';
import { switchBandOf } from './switchBand.ts';

/** What a stretch of a channel holds, counted without copying it. */
export interface StretchFacts {
  /** Samples with a value. */
  readonly values: number;
  readonly min: number;
  readonly max: number;
  readonly mean: number;
  /** Crossings of the switch point, with the hysteresis of core/signal/crossings.ts; null where no sensor switches. */
  readonly switches: number | null;
}

/** Facts from startS up to and including endS; null where no sample with a value lies there. */
export function stretchFacts(channel: Channel, startS: Seconds, endS: Seconds): StretchFacts | null {
  const { values, time } = channel;
  const band = switchBandOf(channel);
  let [count, sum, min, max] = [0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let side = 0;
  let switches = 0;
  for (let i = firstAtOrAfter(time, startS), end = endIndex(channel, endS); i < end; i++) {
    const value = values[i] ?? Number.NaN;
    if (!Number.isFinite(value)) continue;
    count++;
    sum += value;
    if (value < min) min = value;
    if (value > max) max = value;
    if (band === null) continue;
    const now = value >= band.high ? 1 : value <= band.low ? -1 : side;
    if (side !== 0 && now !== side) switches++;
    side = now;
  }
  if (count === 0) return null;
  return { values: count, min, max, mean: sum / count, switches: band === null ? null : switches };
}

/** One past the last sample at or before `endS`. */
function endIndex({ time }: Channel, endS: Seconds): number {
  let end = firstAtOrAfter(time, endS);
  while (end < sampleCount(time) && timeAt(time, end) <= endS) end++;
  return end;
}
