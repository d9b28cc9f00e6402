import type { Seconds, Share } from '../units/quantities.ts';
import { likelySwitching } from './likelySwitching.ts';
import type { WindowData } from './measure.ts';

/** Lag of a usual rear sensor with the gas in its protective tube (from memory, order of magnitude). */
const REAR_LAG_S: Seconds = 0.12;

/**
 * Share of the front sensor's swing that a usual rear sensor could show if there were no converter at all: a first-order
 * lag makes a fast wave smaller, so a ratio of one half at 2 Hz is as bad as one near one at 0.5 Hz.
 */
export function deadGain(data: WindowData): Share {
  return 1 / Math.hypot(1, 2 * Math.PI * likelySwitching(data) * REAR_LAG_S);
}
