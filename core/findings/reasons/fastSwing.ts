import { percent } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** How far the rear sensor swings with the fuel control, against what would come through with no converter (check 3.02). */
export const fastSwing: ReasonRule = {
  id: 'fastSwing',
  look(evidence) {
    const through = evidence.steadyOverDead('fastSwingRatio');
    const ratio = evidence.steady('fastSwingRatio');
    if (through === null || ratio === null) return null;
    return {
      value: through,
      detail: `The rear sensor swings ${percent(ratio)} as far as the front one: ${percent(Math.min(1, through))} of what would come through with no converter.`,
    };
  },
};
