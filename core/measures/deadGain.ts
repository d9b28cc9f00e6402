import { fastestSwitching } from '../signal/aliasing.ts';
import { median } from '../statistics/quantile.ts';
import type { Hertz, Seconds, Share } from '../units/quantities.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import type { WindowData } from './measure.ts';
import { frontVoltage } from './sensors.ts';
import { switchRate, whyNotCountable } from './switching.ts';

/** Lag of a usual rear sensor with the gas in its protective tube (from memory, order of magnitude). */
const REAR_LAG_S: Seconds = 0.12;

/** Fuel controls seldom swing as fast as they could; where it cannot be counted this share of the fastest is taken. */
const USUAL_SHARE = 0.7;

/** How often a second the front sensor goes back and forth: counted, or what is usual at this engine speed. */
export function likelySwitching(data: WindowData): Hertz {
  const { sensor } = frontVoltage(data);
  const seen = sensor && !whyNotCountable(sensor, data) ? switchRate(sensor) : 0;
  if (seen > 0.2) return seen;
  const rpms = trackedBetween(engineTrack(data.capture), 'rpm', data.window.startS, data.window.endS);
  return USUAL_SHARE * fastestSwitching(rpms.length > 0 ? median(rpms) : null);
}

/**
 * Share of the front sensor's swing that a usual rear sensor could show if there were no converter at all: a first-order
 * lag makes a fast wave smaller, so a ratio of one half at 2 Hz is as bad as one near one at 0.5 Hz.
 */
export function deadGain(data: WindowData): Share {
  return 1 / Math.hypot(1, 2 * Math.PI * likelySwitching(data) * REAR_LAG_S);
}
