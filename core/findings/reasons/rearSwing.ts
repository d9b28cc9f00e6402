import { round } from '../../words/numbers.ts';
import { onLine, WEIGHTS } from '../calibration.ts';
import type { ReasonRule } from './reasonRule.ts';

/** Behind a wideband front sensor there is no front voltage to compare with: the rear sensor's own fast swing stands alone. */
export const rearSwing: ReasonRule = {
  id: 'rearSwing',
  weigh({ wideband, rearFastSwingV }) {
    if (!wideband || rearFastSwingV === null) return null;
    return {
      weight: onLine(WEIGHTS.rearFastSwing, rearFastSwingV),
      detail: `Without slow wander the rear sensor swings ${round(rearFastSwingV, 2)} V behind a wideband front sensor.`,
    };
  },
};
