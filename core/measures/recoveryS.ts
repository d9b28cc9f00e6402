import { median } from '../statistics/quantile.ts';
import { fuelCutAnswers } from './fuelCutAnswers.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { renewalStep } from './sensors.ts';

/**
 * Recovery after a fuel cut: from the moment the front sensor is rich again (or, without one, the cut's end) until the
 * rear sensor is, the median over the cuts in the window. While the rich gas empties the converter the rear stays lean.
 * The interval is what the steps of both sensors leave open.
 */
export const recoveryS: Measure = {
  id: 'recoveryS',
  words: 'Recovery of the rear sensor after a fuel cut',
  unit: 's',
  digits: 1,
  needs: 'A fuel cut in the window, and a rear sensor that went lean in it and came back.',
  help: 'Some seconds behind a converter that stores, under half a second behind one that does not; compare only at the same air flow.',
  compute(data) {
    if (!data.downstream) return missing(this.id, 'The rear oxygen sensor was not recorded.');
    const answers = fuelCutAnswers(data);
    if (answers.length === 0) return missing(this.id, 'There is no fuel cut in this window.');
    const rearStep = renewalStep(data.downstream.channel);
    // Two sensors that come back in the same step of the instrument are half a step apart, as far as anybody can tell.
    const times = answers.flatMap(({ rearBackS, frontBackS, cut }) =>
      rearBackS === null ? [] : [Math.max(rearStep / 2, rearBackS - (frontBackS ?? cut.endS))],
    );
    if (times.length === 0) return missing(this.id, 'The rear sensor was not seen to go lean and come back.');
    const value = median(times);
    const step = rearStep + (data.upstream ? renewalStep(data.upstream.channel) : 0);
    return measured(this.id, value, [Math.max(0, value - step), value + step]);
  },
};
