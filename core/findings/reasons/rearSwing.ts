import { percent, round } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** Swing of a rear sensor that follows a mixture swinging to both sides of lambda 1 (checks 4.11). */
const WHOLE_SWING_V = 0.75;

/**
 * Behind a wideband front sensor there is no front voltage to compare with: the rear sensor's own fast swing stands for
 * it, against what a usual rear sensor shows of a mixture that goes back and forth at this pace with no converter.
 */
export const rearSwing: ReasonRule = {
  id: 'rearSwing',
  look(evidence) {
    const through = evidence.steadyOverDead('downstreamFastV');
    const swing = evidence.steady('downstreamFastV');
    if (!evidence.wideband || swing === null || through === null) return null;
    return {
      value: through / WHOLE_SWING_V,
      detail: `Behind a wideband front sensor the rear one swings ${round(swing, 2)} V without slow wander: ${percent(Math.min(1, through / WHOLE_SWING_V))} of what would come through with no converter.`,
    };
  },
};
