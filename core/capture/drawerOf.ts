import type { Seconds } from '../units/quantities.ts';
import type { Channel } from './channel.ts';
import { buildPyramid, type Pyramid } from './pyramid.ts';
import type { TraceView } from './traceView.ts';
import { viewOf } from './viewOf.ts';

/** Draws one channel over any stretch. The pyramid is built when it is first needed and kept. */
export function drawerOf(channel: Channel): (startS: Seconds, endS: Seconds, buckets: number) => TraceView {
  let pyramid: Pyramid | null = null;
  return (startS, endS, buckets) => {
    pyramid ??= buildPyramid(channel.values);
    return viewOf(channel, pyramid, startS, endS, buckets);
  };
}
