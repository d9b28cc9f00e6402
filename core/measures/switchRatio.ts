import { ratioOfCounts } from '../statistics/exactIntervals.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rearVoltage } from './sensors.ts';
import { switchesOf, whyNotCountable } from './switching.ts';

/**
 * Crossings of the rear sensor over crossings of the front one in the same stretch (check 3.01). Interval from the
 * binomial that is left when the sum of both counts is given (check 6.12).
 */
export const switchRatio: Measure = {
  id: 'switchRatio',
  words: 'Switching, rear over front',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages, both fast enough to count, and a front sensor that switches.',
  help: 'Near 0 behind a new converter; 0.8 to 0.9 is printed for failed ones. Makers draw their own lines, from 0.5 to 0.8.',
  compute(data) {
    const front = frontVoltage(data);
    const rear = rearVoltage(data);
    if (!front.sensor) return missing(this.id, front.why);
    if (!rear.sensor) return missing(this.id, rear.why);
    const not = whyNotCountable(front.sensor, data) ?? whyNotCountable(rear.sensor, data);
    if (not) return missing(this.id, not);
    const ahead = switchesOf(front.sensor).length;
    const behind = switchesOf(rear.sensor).length;
    if (ahead === 0) return missing(this.id, 'The front sensor does not switch in this window.');
    return measured(this.id, behind / ahead, ratioOfCounts(behind, ahead));
  },
};
