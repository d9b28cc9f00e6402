import { fastestSwitching } from '../signal/aliasing.ts';
import { remember } from '../signal/remember.ts';
import { median } from '../statistics/quantile.ts';
import type { Hertz } from '../units/quantities.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import type { WindowData } from './measure.ts';
import { frontVoltage } from './sensors.ts';
import { switchRate, whyNotCountable } from './switching.ts';

/** Fuel controls seldom swing as fast as they could; where it cannot be counted this share of the fastest is taken. */
const USUAL_SHARE = 0.7;

/** How often a second the front sensor goes back and forth: counted, or what is usual at this engine speed. */
export const likelySwitching = remember((data: WindowData): Hertz => {
  const { sensor } = frontVoltage(data);
  const seen = sensor && !whyNotCountable(sensor, data) ? switchRate(sensor) : 0;
  if (seen > 0.2) return seen;
  const rpms = trackedBetween(engineTrack(data.capture), 'rpm', data.window.startS, data.window.endS);
  return USUAL_SHARE * fastestSwitching(rpms.length > 0 ? median(rpms) : null);
});
