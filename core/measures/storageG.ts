import type { CapacitySaid } from '../model/fit.ts';
import { round } from '../words/numbers.ts';
import { fitOf } from './fitOf.ts';
import type { Measure, MeasureValue, WindowData } from './measure.ts';
import { measured, missing } from './measureValue.ts';

/** A capacity that is bounded at both ends is a number; one that is open says so in words, since any number would mislead. */
function bounded(
  id: string,
  value: number,
  [low, high]: readonly [number | null, number | null],
  bound: CapacitySaid['bound'],
  unit: string,
): MeasureValue {
  if (low !== null && high !== null) return measured(id, value, [low, high]);
  if (bound === 'lowerOnly' && low !== null)
    return missing(
      id,
      `At least ${round(low, 2)} ${unit}: the rear trace stayed so calm that any more explains it as well.`,
    );
  if (bound === 'upperOnly' && high !== null)
    return missing(
      id,
      `At most ${round(high, 2)} ${unit}: the rear trace followed so closely that any less explains it as well.`,
    );
  return missing(id, 'This window says nothing about the storage: the waves were too small for it, or too large.');
}

/**
 * Oxygen storage in grams, by the storage model fitted to the window (core/model), with its 95 % likelihood interval.
 * Null where no air flow was recorded, and where the window leaves one end open.
 */
export const storageG: Measure = {
  id: 'storageG',
  words: 'Oxygen storage',
  unit: 'g',
  digits: 2,
  needs: 'Both sensors, air flow, and waves or a fuel cut that fill and empty the converter.',
  help: 'About 1 g fresh and a few tenths aged for a car of two litres (from memory, order of magnitude). Grams of one definition are never compared with those of another.',
  compute(data: WindowData) {
    const { fit, missing: why } = fitOf(data);
    if (!fit) return missing(this.id, why);
    if (fit.capacityG === null || fit.intervalG === null) return missing(this.id, 'Air flow was not recorded.');
    return bounded(this.id, fit.capacityG, fit.intervalG, fit.bound, 'g');
  },
};

/** The same in seconds: how long a swing of this window's own height, at its own air flow, takes to fill the converter. */
export const storageS: Measure = {
  id: 'storageS',
  words: 'Oxygen storage, in time',
  unit: 's',
  digits: 2,
  needs: 'Both sensors, and waves or a fuel cut that fill and empty the converter.',
  help: 'How long the mixture of this window must stay to one side before it comes through. Needs no air flow.',
  compute(data: WindowData) {
    const { fit, missing: why } = fitOf(data);
    return fit ? bounded(this.id, fit.capacityS, fit.intervalS, fit.bound, 's') : missing(this.id, why);
  },
};
