import { percent } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/** Gain at the switching frequency against that of a rear sensor with no converter ahead of it. */
export const followsWaves: ReasonRule = {
  id: 'followsWaves',
  look(evidence) {
    const through = evidence.steadyOverDead('waveGain');
    if (through === null) return null;
    return {
      value: through,
      detail: `Wave by wave ${percent(Math.min(1, through))} of what would come through with no converter follows the front sensor.`,
    };
  },
};
