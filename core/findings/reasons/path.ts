import { percent } from '../../words/numbers.ts';
import { onLine, WEIGHTS } from '../calibration.ts';
import { measureOf, type ReasonRule } from './reasonRule.ts';

/** Path of the rear trace against what it would travel with no converter (check 3.03). */
export const path: ReasonRule = {
  id: 'path',
  weigh(evidence) {
    const ratio = measureOf(evidence, 'pathRatio');
    if (ratio === null) return null;
    return {
      weight: onLine(WEIGHTS.pathRatio, ratio / evidence.deadGain),
      detail: `The rear trace travels ${percent(ratio)} of the front trace's way up and down; with no converter it could be about ${percent(evidence.deadGain)}.`,
    };
  },
};
