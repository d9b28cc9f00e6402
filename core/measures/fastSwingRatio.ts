import { round } from '../words/numbers.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { bothVoltages, renewalRate } from './sensors.ts';
import { SLOW_SPAN_S, slowAndFast, swingOf } from './slowAndFast.ts';
import { swingRatioInterval } from './swingRatioInterval.ts';

/** Values in the span of the slow part below which the two parts cannot be told. */
const LEAST_IN_SPAN = 5;

/** Swing of the rear sensor over swing of the front one when wander slower than 5 s is taken out of both (check 3.02). */
export const fastSwingRatio: Measure = {
  id: 'fastSwingRatio',
  words: 'Fast swing, rear over front',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages. Survives slow instruments.',
  help: 'As the swing ratio, but only what moves as fast as the fuel control: slow wander of the rear sensor is no fault.',
  compute(data) {
    const both = bothVoltages(data);
    if (both.why !== null) return missing(this.id, both.why);
    const rate = Math.min(renewalRate(both.front.channel), renewalRate(both.rear.channel));
    if (rate * SLOW_SPAN_S < LEAST_IN_SPAN)
      return missing(
        this.id,
        `The sensors brought ${round(rate, 1)} new values a second: too few to tell fast movement from slow.`,
      );
    const value = swingOf(slowAndFast(both.rear).fast) / swingOf(slowAndFast(both.front).fast);
    return measured(this.id, value, swingRatioInterval(data, 'fast'));
  },
};
