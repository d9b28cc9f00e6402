import { round } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** How much air for each litre of engine goes through until the rear sensor recovers from a fuel cut: little means little stored. */
export const recovery: ReasonRule = {
  id: 'recovery',
  look(evidence) {
    const air = evidence.middle('recoveryAir');
    const seconds = evidence.middle('recoveryS');
    if (air === null || seconds === null) return null;
    return {
      value: -Math.log(0.4 + Math.max(0, air)),
      detail: `After a fuel cut the rear sensor takes ${round(seconds, 1)} s, or ${round(air, 1)} g of air for each litre of engine, to be rich again.`,
    };
  },
};
