import { round } from '../../words/numbers.ts';
import type { ReasonRule } from './reasonRule.ts';

/**
 * How much more likely the recorded rear trace is behind a dead converter than behind a good one, by the storage model
 * fitted to steady windows and fuel cuts together (core/model): a difference of logarithms of likelihood.
 */
export const model: ReasonRule = {
  id: 'model',
  look(evidence) {
    const fit = evidence.fit();
    if (!fit || fit.bound === 'none') return null;
    const [low, high] = fit.intervalFor2L;
    const range =
      low === null
        ? high === null
          ? 'any storage'
          : `at most ${round(high, 2)} g`
        : high === null
          ? `at least ${round(low, 2)} g`
          : `${round(low, 2)} to ${round(high, 2)} g`;
    return {
      value: fit.logLikelihoodDead - fit.logLikelihoodGood,
      detail: `The fitted model stores ${round(fit.capacityFor2L, 2)} g of oxygen, as for a two-litre engine; ${range} would fit too (95 %).`,
    };
  },
};
