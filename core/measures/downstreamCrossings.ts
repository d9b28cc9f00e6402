import { garwood } from '../statistics/exactIntervals.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearVoltage } from './sensors.ts';
import { switchesOf, whyNotCountable } from './switching.ts';

/** Crossings of the 0.30/0.60 V band, either way; two make a cycle (checks 6.06, 6.07). Interval after Garwood. */
export const downstreamCrossings: Measure = {
  id: 'downstreamCrossings',
  words: 'Switches, rear',
  unit: '1',
  digits: 0,
  needs: 'The rear sensor, fast enough to count.',
  help: 'Crossings either way; two make a cycle. Some lists count cycles instead: a factor of two.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const not = whyNotCountable(sensor, data);
    if (not) return missing(this.id, not);
    const count = switchesOf(sensor).length;
    return measured(this.id, count, garwood(count));
  },
};
