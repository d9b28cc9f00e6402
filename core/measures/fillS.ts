import { median } from '../statistics/quantile.ts';
import { fuelCutAnswers } from './fuelCutAnswers.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { renewalStep } from './sensors.ts';

/**
 * Time the rear sensor runs behind the front one when a fuel cut begins: pure air fills the converter first. Gas and
 * sensor take their own few tenths of a second. The interval is what the steps of both sensors leave open.
 */
export const fillS: Measure = {
  id: 'fillS',
  words: 'Rear behind front as a fuel cut begins',
  unit: 's',
  digits: 2,
  needs: 'A fuel cut in the window that both sensors were seen to answer, the rear one from above 0.45 V.',
  help: 'Pure air fills any converter quickly: a second and more speaks for storage, two or three tenths for none.',
  compute(data) {
    if (!data.downstream) return missing(this.id, 'The rear oxygen sensor was not recorded.');
    const answers = fuelCutAnswers(data);
    if (answers.length === 0) return missing(this.id, 'There is no fuel cut in this window.');
    const times = answers.flatMap(({ rearLeanS, frontLeanS, rearWasRich }) =>
      rearLeanS === null || frontLeanS === null || !rearWasRich ? [] : [rearLeanS - frontLeanS],
    );
    if (times.length === 0 || !data.upstream)
      return missing(this.id, 'The two sensors were not both seen to fall from rich to lean.');
    const value = median(times);
    const step = renewalStep(data.upstream.channel) + renewalStep(data.downstream.channel);
    return measured(this.id, value, [Math.max(0, value - step), value + step]);
  },
};
