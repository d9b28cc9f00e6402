import { robustRange } from '../statistics/quantile.ts';
import { engineTrack, trackedBetween } from '../windows/engineTrack.ts';
import { span } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** The middle 90 % of air flow or load may span this share of their middle (common practice, no source). */
const WITHIN_SHARE = 0.4;

export const loadSteady: Condition = {
  id: 'loadSteady',
  words: 'Load steady',
  help: 'Changing load brings rich and lean moments of its own. It weakens a finding; it does not forbid one.',
  blocker: null,
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge({ capture, window }) {
    const track = engineTrack(capture);
    for (const [quantity, words, unit] of [
      ['maf', 'Air flow', 'g/s'],
      ['load', 'Load', '%'],
    ] as const) {
      const values = trackedBetween(track, quantity, window.startS, window.endS);
      if (values.length === 0) continue;
      const { low, high, middle } = robustRange(values);
      const detail = `${words} ${span(low, high, 1, unit)}.`;
      return high - low <= WITHIN_SHARE * Math.abs(middle) ? met(this.id, detail) : notMet(this.id, detail);
    }
    return notRecorded(this.id, 'Neither air flow nor load was recorded.');
  },
};
