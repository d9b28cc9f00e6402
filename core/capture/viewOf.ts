import type { Seconds } from '../units/quantities.ts';
import type { Channel } from './channel.ts';
import { gapOf } from './gap.ts';
import { type Extremes, extremesBetween, type Pyramid } from './pyramid.ts';
import { firstAtOrAfter, sampleCount, timeAt } from './timeBase.ts';
import type { TraceView } from './traceView.ts';

/**
 * What is needed to draw a channel from startS to endS in `buckets` columns of pixels. Where the stretch holds no more
 * samples than buckets, the samples themselves, with one more on either side so that the line runs out of the picture;
 * else lowest and highest of each bucket, so that no peak is lost at any zoom. Missing values are left out. An empty or
 * reversed stretch gives a view without entries. Takes a time that depends on the buckets, not on the capture.
 */
export function viewOf(channel: Channel, pyramid: Pyramid, startS: Seconds, endS: Seconds, buckets: number): TraceView {
  const { time } = channel;
  const first = firstAtOrAfter(time, startS);
  let end = firstAtOrAfter(time, endS);
  while (timeAt(time, end) <= endS) end++;
  if (!(endS >= startS) || buckets < 1) return samplesView(channel, startS, endS, 0, 0);
  if (end - first <= buckets) {
    return samplesView(channel, startS, endS, Math.max(0, first - 1), Math.min(sampleCount(time), end + 1));
  }
  return envelopeView(channel, pyramid, startS, endS, Math.floor(buckets));
}

/** Whether the instrument holds each value until the next, so that steps are the honest line. */
export function drawnAsSteps({ role, facts }: Channel): boolean {
  return role === 'fuelStatus' || (facts.renewalRateHz > 0 && facts.renewalRateHz < facts.medianRateHz * 0.75);
}

function samplesView(channel: Channel, startS: Seconds, endS: Seconds, first: number, end: number): TraceView {
  const timesS = new Float64Array(Math.max(0, end - first));
  const values = new Float32Array(timesS.length);
  let length = 0;
  for (let i = first; i < end; i++) {
    const value = channel.values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    timesS[length] = timeAt(channel.time, i);
    values[length] = value;
    length++;
  }
  const low = values.slice(0, length);
  return {
    channelId: channel.id,
    kind: 'samples',
    startS,
    endS,
    timesS: timesS.slice(0, length),
    low,
    high: low,
    steps: drawnAsSteps(channel),
    gapS: gapOf(channel.facts),
  };
}

function envelopeView(channel: Channel, pyramid: Pyramid, startS: Seconds, endS: Seconds, buckets: number): TraceView {
  const { time } = channel;
  const widthS = (endS - startS) / buckets;
  const timesS = new Float64Array(buckets);
  const low = new Float32Array(buckets);
  const high = new Float32Array(buckets);
  let length = 0;
  let from = firstAtOrAfter(time, startS);
  const found: Extremes = { low: 0, high: 0 };
  for (let bucket = 0; bucket < buckets; bucket++) {
    let to = firstAtOrAfter(time, startS + (bucket + 1) * widthS);
    // The stretch includes its last moment.
    if (bucket === buckets - 1) while (timeAt(time, to) <= endS) to++;
    if (to <= from) continue;
    found.low = Number.POSITIVE_INFINITY;
    found.high = Number.NEGATIVE_INFINITY;
    extremesBetween(pyramid, from, to, found);
    from = to;
    if (found.low > found.high) continue;
    timesS[length] = startS + (bucket + 0.5) * widthS;
    low[length] = found.low;
    high[length] = found.high;
    length++;
  }
  return {
    channelId: channel.id,
    kind: 'envelope',
    startS,
    endS,
    timesS: timesS.slice(0, length),
    low: low.slice(0, length),
    high: high.slice(0, length),
    steps: drawnAsSteps(channel),
    gapS: Math.max(gapOf(channel.facts), 2.01 * widthS),
  };
}
