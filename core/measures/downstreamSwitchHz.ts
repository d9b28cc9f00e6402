import { garwood } from '../statistics/exactIntervals.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearVoltage } from './sensors.ts';
import { spanOf, switchesOf, switchRate, whyNotCountable } from './switching.ts';

/** Cycles a second of the rear sensor, counted as the front one's (check 6.07). */
export const downstreamSwitchHz: Measure = {
  id: 'downstreamSwitchHz',
  words: 'Switching frequency, rear',
  unit: 'Hz',
  digits: 2,
  needs: 'The rear sensor, at more than twice the fastest switching the engine speed allows.',
  help: 'How often a second the rear sensor crosses from lean to rich and back. Near 0 behind a converter that stores oxygen.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const not = whyNotCountable(sensor, data);
    if (not) return missing(this.id, not);
    const twice = 2 * spanOf(sensor);
    const [low, high] = garwood(switchesOf(sensor).length);
    return measured(this.id, switchRate(sensor), [low / twice, high / twice]);
  },
};
