import { LEAST_SAMPLES, rangeOf } from '../measures/sensors.ts';
import { span } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** Lean 0.1 to 0.3 V and rich 0.65 to 0.85 V are asked of a sound sensor; a span under 0.5 V is called lazy (common practice, no source). */
const LEAN_V = 0.3;
const RICH_V = 0.62;

export const frontReaches: Condition = {
  id: 'frontReaches',
  words: 'Front sensor reaches both ends',
  help: 'A tired, biased or poisoned sensor no longer reaches both lean and rich voltage, and the fuel control that follows it makes too large or lopsided swings.',
  blocker: 'frontWeak',
  kinds: ['hold', 'cruise', 'mixed'],
  judge({ upstream }) {
    if (!upstream || upstream.series.values.length < LEAST_SAMPLES)
      return notRecorded(this.id, 'The front oxygen sensor was not recorded.');
    if (upstream.channel.role === 'upstreamLambda') return notRecorded(this.id, 'A wideband sensor has no two ends.');
    const { low, high } = rangeOf(upstream);
    const detail = `${span(low, high, 2, 'V')}.`;
    if (low > LEAN_V) return notMet(this.id, `${detail} It does not reach ${LEAN_V} V.`);
    if (high < RICH_V) return notMet(this.id, `${detail} It does not reach ${RICH_V} V.`);
    return met(this.id, detail);
  },
};
