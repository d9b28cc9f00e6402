import type { Seconds } from '../units/quantities.ts';
import type { ChannelFacts } from './channel.ts';

/** A silence this many usual intervals long is a gap: jitter and one missed answer are not. Our choice. */
const INTERVALS = 5;
/** No silence shorter than this is a gap, s: nothing of the trade happens in it. */
const SHORTEST_S = 0.05;

/** The silence between two samples of a channel from which on it counts as a gap. */
export function gapOf({ medianRateHz, jitterS }: ChannelFacts): Seconds {
  if (medianRateHz <= 0) return Number.POSITIVE_INFINITY;
  return Math.max(INTERVALS / medianRateHz, 1 / medianRateHz + 3 * jitterS, SHORTEST_S);
}
