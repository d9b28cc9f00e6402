import { rearLife } from '../measures/rearLife.ts';
import { wavesOf } from '../measures/waves.ts';
import { rearChannel } from '../measures/windowData.ts';
import type { Seconds } from '../units/quantities.ts';
import { round, span } from '../words/numbers.ts';
import type { Condition, ConditionContext } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** A rear sensor whose lag may be longer than this would hide what a dead converter lets through (check 4.32: 2.0 s is slow). */
const QUICK_S: Seconds = 1;

/** Whether the rear sensor was seen to answer, quickly enough for its calm to mean something (check 4.41). */
export const rearAlive: Condition = {
  id: 'rearAlive',
  words: 'Rear sensor proven alive',
  help: 'A calm rear sensor is evidence only if it has been seen to answer in the same capture, and quickly: to a fuel cut, a snap, a change of speed, or the waves that come through.',
  blocker: 'rearNotProven',
  kinds: 'all',
  judge(context) {
    const channel = rearChannel(context.capture, context.bank);
    if (!channel || channel.facts.finite < 2) return notRecorded(this.id, 'The rear oxygen sensor was not recorded.');
    const life = rearLife(channel);
    const byWaves = lagByWaves(context);
    if (life.lagAtMostS <= QUICK_S)
      return met(
        this.id,
        `It moved by ${round(life.moveV, 2)} V at ${round(life.atS ?? 0, 0)} s: its lag is ${round(life.lagAtMostS, 2)} s at most.`,
      );
    if (byWaves <= QUICK_S)
      return met(this.id, `It follows the front sensor's waves: its lag is ${round(byWaves, 1)} s at most.`);
    const lag = Math.min(life.lagAtMostS, byWaves);
    const range = `It stayed within ${span(life.lowV, life.highV, 2, 'V')}`;
    if (!Number.isFinite(lag))
      return notMet(this.id, `${range} and was not seen to answer to anything in this capture.`);
    return notMet(this.id, `${range}; by its quickest move it may lag by ${round(lag, 1)} s.`);
  },
};

/** Longest lag that still lets the waves through which came through: gain <= 1 / sqrt(1 + (2 pi f t)^2). */
function lagByWaves(context: ConditionContext): Seconds {
  const waves = wavesOf(context);
  if (typeof waves === 'string' || waves.transfer.coherence < 2 * waves.chance) return Number.POSITIVE_INFINITY;
  const { gain } = waves.transfer;
  if (gain >= 1) return 0;
  return Math.sqrt(1 / gain ** 2 - 1) / (2 * Math.PI * waves.hz);
}
