import type { CaptureFit } from '../../model/fit.ts';
import { round } from '../../words/numbers.ts';
import type { Evidence } from '../evidence.ts';
import type { ReasonRule } from './reasonRule.ts';

// The storage model fitted to steady windows and fuel cuts together (core/model) says two things, and they do not weigh
// alike: how badly a dead converter explains the recorded rear trace, and how badly a good one does. Each is a logarithm
// of likelihood below that of the best fit. Behind a wideband front sensor the model is given the mixture itself, not
// what a switching sensor betrays of it: its word then has a weight of its own.

/** A dead converter explains the rear trace nearly as well as any. */
export const deadFits: ReasonRule = { id: 'deadFits', look: (evidence) => deadIn(evidence, false) };

/** The same behind a wideband front sensor. */
export const deadFitsByLambda: ReasonRule = { id: 'deadFitsByLambda', look: (evidence) => deadIn(evidence, true) };

/** A good converter explains the rear trace badly. */
export const goodMisfits: ReasonRule = { id: 'goodMisfits', look: (evidence) => goodIn(evidence, false) };

/** The same behind a wideband front sensor. */
export const goodMisfitsByLambda: ReasonRule = {
  id: 'goodMisfitsByLambda',
  look: (evidence) => goodIn(evidence, true),
};

function deadIn(evidence: Evidence, wideband: boolean): ReturnType<ReasonRule['look']> {
  const fit = fitOf(evidence, wideband);
  if (!fit) return null;
  const { logLikelihoodDead } = fit;
  return {
    value: logLikelihoodDead,
    detail: `The fitted model stores ${round(fit.capacityFor2L, 2)} g of oxygen, as for a two-litre engine; ${rangeOf(fit)} would fit too (95 %). A converter that stores next to nothing explains the rear trace ${howWell(logLikelihoodDead)}.`,
  };
}

function goodIn(evidence: Evidence, wideband: boolean): ReturnType<ReasonRule['look']> {
  const fit = fitOf(evidence, wideband);
  if (!fit) return null;
  return {
    value: -fit.logLikelihoodGood,
    detail: `By the fitted model a good converter explains the rear trace ${howWell(fit.logLikelihoodGood)}.`,
  };
}

function fitOf(evidence: Evidence, wideband: boolean): CaptureFit | null {
  if (evidence.wideband !== wideband) return null;
  const fit = evidence.fit();
  return fit && fit.bound !== 'none' ? fit : null;
}

function rangeOf({ intervalFor2L: [low, high] }: CaptureFit): string {
  if (low === null) return high === null ? 'any storage' : `at most ${round(high, 2)} g`;
  return high === null ? `at least ${round(low, 2)} g` : `${round(low, 2)} to ${round(high, 2)} g`;
}

/** So many times worse than this are not told apart. */
const MOST_TIMES = 1000;

function howWell(logLikelihood: number): string {
  const times = Math.exp(-logLikelihood);
  if (times < 1.5) return 'as well as any';
  if (times > MOST_TIMES) return `more than ${MOST_TIMES} times worse than the best fit`;
  return `${round(times, times < 10 ? 1 : 0)} times worse than the best fit`;
}
