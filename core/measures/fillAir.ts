import { medianInterval } from '../statistics/exactIntervals.ts';
import { median } from '../statistics/quantile.ts';
import { airPerLitre } from './airPerLitre.ts';
import { fuelCutAnswers } from './fuelCutAnswers.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';

/**
 * Air for each litre of engine that goes through before the rear sensor is lean in a fuel cut. Median over the cuts of the
 * window; its interval, by order statistics, takes six of them.
 */
export const fillAir: Measure = {
  id: 'fillAir',
  words: 'Air for each litre of engine until the rear sensor is lean',
  unit: 'g/L',
  digits: 1,
  needs: 'A fuel cut in the window that both sensors were seen to answer, and engine speed.',
  help: 'Nearly a quarter of that air is oxygen, and the converter takes it up before the rear sensor sees any.',
  compute(data) {
    if (!data.downstream) return missing(this.id, 'The rear oxygen sensor was not recorded.');
    const amounts = fuelCutAnswers(data).flatMap(({ rearLeanS, frontLeanS, rearWasRich }) => {
      if (rearLeanS === null || frontLeanS === null || !rearWasRich) return [];
      const air = airPerLitre(data.capture, frontLeanS, rearLeanS);
      return air === null ? [] : [air];
    });
    if (amounts.length === 0) return missing(this.id, 'The two sensors were not both seen to fall from rich to lean.');
    return measured(this.id, median(amounts), medianInterval(Float64Array.from(amounts).sort()));
  },
};
