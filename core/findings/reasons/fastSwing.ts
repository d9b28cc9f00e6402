import { percent } from '../../words/numbers.ts';
import { onLine, WEIGHTS } from '../calibration.ts';
import { measureOf, type ReasonRule } from './reasonRule.ts';

/** Fast swing of the rear sensor against what would come through with no converter (check 3.02). */
export const fastSwing: ReasonRule = {
  id: 'fastSwing',
  weigh(evidence) {
    const ratio = measureOf(evidence, 'fastSwingRatio');
    if (ratio === null) return null;
    return {
      weight: onLine(WEIGHTS.fastSwingRatio, ratio / evidence.deadGain),
      detail: `Without slow wander the rear sensor swings ${percent(ratio)} as far as the front one; with no converter it could be about ${percent(evidence.deadGain)}.`,
    };
  },
};
