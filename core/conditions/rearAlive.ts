import { rearChannel } from '../measures/windowData.ts';
import { counted, round, span } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { rearLife } from './rearLife.ts';

/** A rear sensor that takes longer between 0.6 and 0.3 V is slow; more than 2.0 s in a fuel cut is in print (check 4.32). */
const SLOW_S = 1.5;

export const rearAlive: Condition = {
  id: 'rearAlive',
  words: 'Rear sensor proven alive',
  help: 'A calm rear sensor is evidence only if it has been seen to answer in the same capture: to a fuel cut, a snap, or waves that come through.',
  blocker: 'rearNotProven',
  kinds: 'all',
  judge({ capture, bank }) {
    const channel = rearChannel(capture, bank);
    if (!channel || channel.facts.finite < 2) return notRecorded(this.id, 'The rear oxygen sensor was not recorded.');
    const life = rearLife(channel);
    const range = `It stayed within ${span(life.lowV, life.highV, 2, 'V')}`;
    if (life.answers === 0) return notMet(this.id, `${range} and was not seen to answer to anything in this capture.`);
    if (life.quickestS !== null && life.quickestS > SLOW_S)
      return notMet(this.id, `Its quickest edge took ${round(life.quickestS, 1)} s between 0.3 and 0.6 V: it is slow.`);
    return met(
      this.id,
      `It moved by 0.3 V or more ${counted(life.answers, 'time')}, first at ${round(life.firstS ?? 0, 0)} s.`,
    );
  },
};
