import { round } from '../../words/numbers.ts';
import { onLine, WEIGHTS } from '../calibration.ts';
import { measureOf, type ReasonRule } from './reasonRule.ts';

/** Switches of the rear sensor against those of the front one (check 3.01): near 0 says little, near 1 says much. */
export const switching: ReasonRule = {
  id: 'switching',
  weigh(evidence) {
    const ratio = measureOf(evidence, 'switchRatio');
    if (ratio === null) return null;
    return {
      weight: onLine(WEIGHTS.switchRatio, ratio),
      detail: `The rear sensor switches ${round(ratio, 2)} times as often as the front one.`,
    };
  },
};
