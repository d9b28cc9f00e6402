import { round } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** How much air for each litre of engine goes through as a fuel cut begins before the rear sensor is lean. */
export const fill: ReasonRule = {
  id: 'fill',
  look(evidence) {
    const air = evidence.middle('fillAir');
    const seconds = evidence.middle('fillS');
    if (air === null || seconds === null) return null;
    return {
      value: -Math.log(0.8 + Math.max(0, air)),
      detail: `As a fuel cut begins the rear sensor follows after ${round(seconds, 2)} s, or ${round(air, 1)} g of air for each litre of engine.`,
    };
  },
};
