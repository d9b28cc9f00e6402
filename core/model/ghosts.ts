import type { CapacityFacts } from './capacityFacts.ts';
import type { Passage } from './capacityGrid.ts';
import type { GhostTraces } from './fit.ts';
import { shownVoltage } from './missTable.ts';
import type { WindowInput } from './windowInput.ts';

/** The traces to draw, and the fitted one at the moments that were compared. */
export interface Ghosts {
  readonly traces: GhostTraces;
  readonly atCompared: Float64Array;
}

/** Rear voltage behind the converter as fitted, a good one and a dead one, all equally brisk and through the same rear sensor. */
export function ghostTraces(window: WindowInput, { bestG, goodG, deadG }: CapacityFacts, passage: Passage): Ghosts {
  const { firstStep, startS } = window;
  const { stepS } = window.input;
  const cut = (grams: number) => shownVoltage(grams, passage, window).subarray(firstStep);
  const fitted = cut(bestG);
  return {
    traces: {
      timesS: fitted.map((_, k) => startS + (firstStep + k) * stepS),
      fitted,
      good: cut(goodG),
      dead: cut(deadG),
    },
    atCompared: Float64Array.from(window.compared.steps, (k) => fitted[k - firstStep] ?? 0),
  };
}
