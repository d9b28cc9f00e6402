import { LEAST_SAMPLES, rangeOf, richShare } from '../measures/sensors.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** A closed loop keeps the front sensor rich for about half of the time. */
const LEAST_RICH = 0.2;
/** Conversion needs lambda within a per cent or so of 1 (check 3.34); a closed loop on a wideband sensor keeps it there. */
const MOST_OFF = 0.02;

/** Whether the front sensor says that the mixture is kept about lambda 1. */
export const mixtureBalanced: Condition = {
  id: 'mixtureBalanced',
  words: 'Mixture balanced',
  help: 'A converter is judged under a mixture that swings about lambda 1. One that stays lean or rich fills or empties any converter for good.',
  blocker: 'mixtureOff',
  kinds: ['hold', 'cruise', 'mixed'],
  judge({ upstream }) {
    if (!upstream || upstream.series.values.length < LEAST_SAMPLES)
      return notRecorded(this.id, 'The front oxygen sensor was not recorded.');
    if (upstream.channel.role === 'upstreamLambda') {
      const { middle } = rangeOf(upstream);
      const detail = `Lambda ${round(middle, 3)} in the middle.`;
      return Math.abs(middle - 1) > MOST_OFF ? notMet(this.id, detail) : met(this.id, detail);
    }
    const rich = richShare(upstream);
    const detail = `The front sensor is rich for ${percent(rich)} of the time.`;
    return rich < LEAST_RICH || rich > 1 - LEAST_RICH ? notMet(this.id, detail) : met(this.id, detail);
  },
};
