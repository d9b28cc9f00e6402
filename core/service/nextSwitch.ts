import type { Channel } from '../capture/channel.ts';
import { seriesOf } from '../capture/series.ts';
import { firstAtOrAfter, timeAt } from '../capture/timeBase.ts';
import { type Band, hysteresisCrossings } from '../signal/crossings.ts';
import type { SampleIndex, Seconds } from '../units/quantities.ts';

/**
 * The next crossing of the band strictly after `fromS` (direction 1) or before it (-1), by the hysteresis that the
 * measures count with; null where there is none as far as the channel goes. Walks from `fromS` and copies only the edge
 * it finds, so that its time depends on how far the crossing is, and its memory on nothing.
 */
export function nextSwitch(channel: Channel, band: Band, fromS: Seconds, direction: 1 | -1): Seconds | null {
  const here = firstAtOrAfter(channel.time, fromS);
  return direction === 1 ? firstAfter(channel, band, fromS, here) : lastBefore(channel, band, fromS, here);
}

function firstAfter(channel: Channel, band: Band, fromS: Seconds, here: SampleIndex): Seconds | null {
  // Which side the trace comes from is told by the last sample outside the band, however long ago that was.
  let left = nextOutside(channel, band, here - 1, -1) ?? nextOutside(channel, band, here, 1);
  while (left !== null) {
    const arrived: SampleIndex | null = nextOutside(channel, band, left + 1, 1);
    if (arrived === null) return null;
    const timeS = crossing(channel, band, left, arrived);
    if (timeS !== null && timeS > fromS) return timeS;
    left = arrived;
  }
  return null;
}

function lastBefore(channel: Channel, band: Band, fromS: Seconds, here: SampleIndex): Seconds | null {
  // An edge that began before `fromS` may arrive after it.
  let arrived = nextOutside(channel, band, here, 1) ?? nextOutside(channel, band, here - 1, -1);
  while (arrived !== null) {
    const left: SampleIndex | null = nextOutside(channel, band, arrived - 1, -1);
    if (left === null) return null;
    const timeS = crossing(channel, band, left, arrived);
    if (timeS !== null && timeS < fromS) return timeS;
    arrived = left;
  }
  return null;
}

/** The nearest sample from `index` on, in a direction, that lies outside the band; null where there is none. */
function nextOutside({ values }: Channel, band: Band, index: SampleIndex, step: 1 | -1): SampleIndex | null {
  for (let i = index; i >= 0 && i < values.length; i += step) {
    const value = values[i] ?? Number.NaN;
    if (value <= band.low || value >= band.high) return i;
  }
  return null;
}

/** When the trace crossed between two samples outside the band with none between them; null where it did not. */
function crossing(channel: Channel, band: Band, left: SampleIndex, arrived: SampleIndex): Seconds | null {
  if (sideOf(channel, band, left) === sideOf(channel, band, arrived)) return null;
  const edge = seriesOf(channel, timeAt(channel.time, left), timeAt(channel.time, arrived));
  return hysteresisCrossings(edge, band)[0]?.timeS ?? null;
}

function sideOf({ values }: Channel, band: Band, index: SampleIndex): boolean {
  return (values[index] ?? 0) >= band.high;
}
