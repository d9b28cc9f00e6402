import { garwood } from '../statistics/exactIntervals.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage } from './sensors.ts';
import { spanOf, switchesOf, switchRate, whyNotCountable } from './switching.ts';

/**
 * Cycles a second of the front sensor: crossings of the 0.30/0.60 V band over twice the time (check 6.07). The interval
 * is Garwood's for the count, which is wider than a regular switching deserves and so on the safe side (check 6.13).
 */
export const upstreamSwitchHz: Measure = {
  id: 'upstreamSwitchHz',
  words: 'Switching frequency, front',
  unit: 'Hz',
  digits: 2,
  needs: 'The front sensor as a switching voltage, at more than twice the fastest switching the engine speed allows.',
  help: 'How often a second the front sensor goes once from lean to rich and back. At least 0.8 Hz is usual when held at 2000 to 2500 1/min.',
  compute(data) {
    const { sensor, why } = frontVoltage(data);
    if (!sensor) return missing(this.id, why);
    const not = whyNotCountable(sensor, data);
    if (not) return missing(this.id, not);
    const twice = 2 * spanOf(sensor);
    const [low, high] = garwood(switchesOf(sensor).length);
    return measured(this.id, switchRate(sensor), [low / twice, high / twice]);
  },
};
