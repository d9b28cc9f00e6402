import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { bothVoltages, rangeOf } from './sensors.ts';
import { swingOf } from './slowAndFast.ts';
import { swingRatioInterval } from './swingRatioInterval.ts';

/** Swing of the rear sensor over swing of the front one, each without its outermost 5 % at either end (check 3.02). */
export const amplitudeRatio: Measure = {
  id: 'amplitudeRatio',
  words: 'Swing, rear over front',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages. Survives slow instruments, since it does not count.',
  help: 'How far the rear sensor swings compared with the front one, slow wander included.',
  compute(data) {
    const both = bothVoltages(data);
    if (both.why !== null) return missing(this.id, both.why);
    const value = swingOf(rangeOf(both.rear)) / swingOf(rangeOf(both.front));
    return measured(this.id, value, swingRatioInterval(data, 'all'));
  },
};
