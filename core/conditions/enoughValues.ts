import { renewalRate } from '../measures/sensors.ts';
import { round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** Independent values of each sensor below which a distribution is too vague to judge by (common practice, no source). */
const LEAST_VALUES = 25;

export const enoughValues: Condition = {
  id: 'enoughValues',
  words: 'Values enough',
  help: 'However slow the instrument, some tens of new values of both sensors are needed before their distribution says anything.',
  blocker: 'tooFewValues',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge({ upstream, downstream, window }) {
    const counts = [upstream, downstream].flatMap((sensor) =>
      sensor
        ? [Math.min(sensor.series.values.length, renewalRate(sensor.channel) * (window.endS - window.startS))]
        : [],
    );
    if (counts.length === 0) return notRecorded(this.id, 'No oxygen sensor was recorded.');
    const fewest = Math.min(...counts);
    const detail = `About ${round(fewest, 0)} new values of the slower sensor`;
    return fewest < LEAST_VALUES
      ? notMet(this.id, `${detail}; at least ${LEAST_VALUES} are wanted.`)
      : met(this.id, `${detail}.`);
  },
};
