import { fastestSwitching } from '../signal/aliasing.ts';
import { hysteresisCrossings } from '../signal/crossings.ts';
import { remember } from '../signal/remember.ts';
import { median } from '../statistics/quantile.ts';
import type { Hertz } from '../units/quantities.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import type { SensorSeries, WindowData } from './measure.ts';
import { frontVoltage, LEAST_SAMPLES, renewalRate } from './sensors.ts';
import { slowAndFast, swingOf } from './slowAndFast.ts';
import { spanOf, switchRate, whyNotCountable } from './switching.ts';

/** Fuel controls seldom swing as fast as they could; where it cannot be counted this share of the fastest is taken. */
const USUAL_SHARE = 0.7;
/** A rarer swing than this is no fuel control. */
const LEAST_HZ: Hertz = 0.2;

/**
 * How often a second the mixture goes back and forth: switches of a switching front sensor, swings of a wideband one
 * about its own slow mean, or, where the instrument is too slow for either, what is usual at this engine speed.
 */
export const likelySwitching = remember((data: WindowData): Hertz => {
  const { sensor } = frontVoltage(data);
  if (sensor && !whyNotCountable(sensor, data)) {
    const seen = switchRate(sensor);
    if (seen > LEAST_HZ) return seen;
  }
  const rpms = trackedBetween(engineTrack(data.capture), 'rpm', data.window.startS, data.window.endS);
  const usual = USUAL_SHARE * fastestSwitching(rpms.length > 0 ? median(rpms) : null);
  const dither = data.upstream?.channel.role === 'upstreamLambda' ? ditherRate(data.upstream) : null;
  return dither ?? usual;
});

/** Swings of lambda about its slow mean, a second; null where the instrument is too slow, or they are too rare. */
function ditherRate(sensor: SensorSeries): Hertz | null {
  if (sensor.series.values.length < LEAST_SAMPLES) return null;
  const { fast, fastPart } = slowAndFast(sensor);
  const quarter = swingOf(fast) / 4;
  const middle = (fast.low + fast.high) / 2;
  if (!(quarter > 0)) return null;
  const crossings = hysteresisCrossings(fastPart, { low: middle - quarter, high: middle + quarter }).length;
  const rate = crossings / (2 * Math.max(1, spanOf(sensor)));
  return rate > LEAST_HZ && renewalRate(sensor.channel) > 4 * rate ? rate : null;
}
