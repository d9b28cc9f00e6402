import { fastestSwitching } from '../signal/aliasing.ts';
import { type Band, type Crossing, hysteresisCrossings } from '../signal/crossings.ts';
import { remember } from '../signal/remember.ts';
import { garwood } from '../statistics/exactIntervals.ts';
import { median } from '../statistics/quantile.ts';
import type { Hertz, Seconds } from '../units/quantities.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { round } from '../words/numbers.ts';
import type { MeasureValue, SensorSeries, WindowData } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { renewalRate, type Usable } from './sensors.ts';

/**
 * The band around the switch point of 0.45 V that a trace must cross to have switched. 0.30 and 0.60 V is the widest of
 * the bands in use (0.35/0.55 and 0.40/0.50 are used too; common practice, no source) and the one noise disturbs least.
 */
export const SWITCH_BAND: Band = { low: 0.3, high: 0.6 };

/** The switches of a sensor within its window. */
export const switchesOf = remember((sensor: SensorSeries): Crossing[] =>
  hysteresisCrossings(sensor.series, SWITCH_BAND),
);

/** From the sensor's first to its last sample in the window. */
export function spanOf({ series }: SensorSeries): Seconds {
  const { timesS } = series;
  return timesS.length > 1 ? (timesS[timesS.length - 1] ?? 0) - (timesS[0] ?? 0) : 0;
}

/** Cycles a second by crossings: two crossings a cycle (check 6.07). 0 for a span of 0. */
export function switchRate(sensor: SensorSeries): Hertz {
  const span = spanOf(sensor);
  return span > 0 ? switchesOf(sensor).length / (2 * span) : 0;
}

/** Samples a cycle must have at least for its two crossings to be seen. */
const LEAST_PER_CYCLE = 4;

/**
 * Why switches of this sensor cannot be counted in this window, or null where they can. Two things must hold: the rate
 * at which values are renewed is more than twice the fastest switching that the engine speed allows, so that nothing
 * can hide behind an alias (sampling theorem, Numerical Recipes 13.8); and the cycles that were seen have samples enough.
 */
export function whyNotCountable(sensor: SensorSeries, data: WindowData): string | null {
  const rate = renewalRate(sensor.channel);
  const rpms = trackedBetween(engineTrack(data.capture), 'rpm', data.window.startS, data.window.endS);
  const rpm = rpms.length > 0 ? median(rpms) : null;
  const needs = 2 * fastestSwitching(rpm);
  if (rate <= needs)
    return (
      `This sensor brought ${round(rate, 1)} new values a second. ` +
      `${rpm === null ? 'A fuel control' : `At ${round(rpm, 0)} 1/min a fuel control`} may switch ` +
      `${round(needs / 2, 1)} times a second, and counting that needs more than ${round(needs, 1)} values a second.`
    );
  const seen = switchRate(sensor);
  if (seen > 0 && rate / seen < LEAST_PER_CYCLE)
    return `This sensor brought ${round(rate / seen, 1)} new values a cycle; counting needs ${LEAST_PER_CYCLE}.`;
  return null;
}

/**
 * Cycles a second of a sensor as a measure with this id: crossings of the band over twice the time (check 6.07), with
 * Garwood's interval for the count, which is wider than a regular switching deserves and so on the safe side (check
 * 6.13). Missing, with the reason, without the sensor or where its switches cannot be counted.
 */
export function switchHz(id: string, { sensor, why }: Usable, data: WindowData): MeasureValue {
  if (!sensor) return missing(id, why);
  const not = whyNotCountable(sensor, data);
  if (not) return missing(id, not);
  const twice = 2 * spanOf(sensor);
  const [low, high] = garwood(switchesOf(sensor).length);
  return measured(id, switchRate(sensor), [low / twice, high / twice]);
}
