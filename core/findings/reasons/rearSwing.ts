import { round } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** Behind a wideband front sensor there is no front voltage to compare with: the rear sensor's own fast swing stands alone. */
export const rearSwing: ReasonRule = {
  id: 'rearSwing',
  look(evidence) {
    const swing = evidence.steady('downstreamFastV');
    if (!evidence.wideband || swing === null) return null;
    return {
      value: swing,
      detail: `Without slow wander the rear sensor swings ${round(swing, 2)} V behind a wideband front sensor.`,
    };
  },
};
