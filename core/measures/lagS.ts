import { crossCorrelationDelay } from '../signal/crossCorrelation.ts';
import { readOffEvenly } from '../signal/valueAt.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rearVoltage, renewalRate } from './sensors.ts';
import { spanOf, switchRate, whyNotCountable } from './switching.ts';

/** A rear trace that is less alike than this does not follow the front one: then there is no lag to speak of. */
const LEAST_CORRELATION = 0.4;
const MOST_HZ = 100;

/**
 * Time by which the rear sensor runs behind the front one: the largest normalised cross-correlation within half a front
 * period, refined by a parabola (check 6.05). Null where the rear does not follow.
 */
export const lagS: Measure = {
  id: 'lagS',
  words: 'Lag of the rear sensor',
  unit: 's',
  digits: 2,
  needs: 'Both sensors as voltages, at least ten values a front cycle, and a rear sensor that follows the front one.',
  help: 'A short lag behind a rear sensor that follows means little storage between the two.',
  compute(data) {
    const front = frontVoltage(data);
    const rear = rearVoltage(data);
    if (!front.sensor) return missing(this.id, front.why);
    if (!rear.sensor) return missing(this.id, rear.why);
    const not = whyNotCountable(front.sensor, data) ?? whyNotCountable(rear.sensor, data);
    if (not) return missing(this.id, not);
    const frequency = switchRate(front.sensor);
    const rate = Math.min(renewalRate(front.sensor.channel), renewalRate(rear.sensor.channel));
    if (frequency === 0) return missing(this.id, 'The front sensor does not switch in this window.');
    if (rate < 10 * frequency)
      return missing(this.id, 'A lag needs at least ten values of both sensors a front cycle.');
    const stepS = 1 / Math.min(rate, MOST_HZ);
    const startS = Math.max(front.sensor.series.timesS[0] ?? 0, rear.sensor.series.timesS[0] ?? 0);
    const count = Math.floor((Math.min(spanOf(front.sensor), spanOf(rear.sensor)) - 2 * stepS) / stepS);
    const half = Math.floor(0.5 / frequency / stepS);
    if (count < 4 * half) return missing(this.id, 'The window is too short to find a lag.');
    const ahead = readOffEvenly(front.sensor.series, startS, stepS, count).filter(Number.isFinite);
    const behind = readOffEvenly(rear.sensor.series, startS, stepS, count).filter(Number.isFinite);
    const delay = crossCorrelationDelay(ahead, behind, -1, half + 1);
    if (!delay || delay.correlation < LEAST_CORRELATION)
      return missing(this.id, 'The rear sensor does not follow the front one.');
    return measured(this.id, delay.steps * stepS);
  },
};
