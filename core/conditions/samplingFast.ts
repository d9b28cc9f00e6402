import { renewalRate } from '../measures/sensors.ts';
import { whyNotCountable } from '../measures/switching.ts';
import { round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

export const samplingFast: Condition = {
  id: 'samplingFast',
  words: 'Sampling fast enough to count',
  help: 'Switches can be counted only if the instrument brings more than two values per cycle of the fastest switching. Below that, swing and level still tell something; counts, frequency and lag do not.',
  blocker: null,
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge(context) {
    const sensors = [context.upstream, context.downstream].filter((sensor) => sensor !== null);
    if (sensors.length === 0) return notRecorded(this.id, 'No oxygen sensor was recorded.');
    for (const sensor of sensors) {
      const why = whyNotCountable(sensor, context);
      if (why) return notMet(this.id, why);
    }
    const slowest = Math.min(...sensors.map(({ channel }) => renewalRate(channel)));
    return met(this.id, `${round(slowest, slowest < 10 ? 1 : 0)} new values a second.`);
  },
};
