import { percent } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** A twin that lets almost nothing through is compared as if it let this much through. */
const LEAST = 0.05;

/**
 * A known-good twin under the same test shares engine, pipes and control, so how many times more comes through here than
 * there needs no guess about them. The logarithm of that ratio.
 */
export const twin: ReasonRule = {
  id: 'twin',
  look(evidence) {
    const here = evidence.steadyOverDead('fastSwingRatio');
    const there = evidence.twin?.steadyOverDead('fastSwingRatio') ?? null;
    if (here === null || there === null) return null;
    return {
      value: Math.log(Math.max(LEAST, here) / Math.max(LEAST, there)),
      detail: `Here ${percent(Math.min(1, here))} of what would come through with no converter comes through, on the healthy twin ${percent(Math.min(1, there))}.`,
    };
  },
};
