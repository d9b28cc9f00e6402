import { medianInterval } from '../statistics/exactIntervals.ts';
import { median } from '../statistics/quantile.ts';
import { airPerLitre } from './airPerLitre.ts';
import { fuelCutAnswers } from './fuelCutAnswers.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { renewalStep } from './sensors.ts';

/**
 * Air for each litre of engine that goes through until the rear sensor is rich again after a fuel cut: the recovery in
 * a form that can be compared between speeds and engines. Median over the cuts of the window; its interval, by order
 * statistics, takes six of them.
 */
export const recoveryAir: Measure = {
  id: 'recoveryAir',
  words: 'Air for each litre of engine until the rear sensor recovers',
  unit: 'g/L',
  digits: 1,
  needs: 'A fuel cut in the window, a rear sensor that went lean in it and came back, and engine speed.',
  help: 'The same as the recovery time, but counted in air, so that a quick engine and a slow one can be compared.',
  compute(data) {
    if (!data.downstream) return missing(this.id, 'The rear oxygen sensor was not recorded.');
    const halfStep = renewalStep(data.downstream.channel) / 2;
    const amounts = fuelCutAnswers(data).flatMap(({ rearBackS, frontBackS, cut }) => {
      const fromS = frontBackS ?? cut.endS;
      const air = rearBackS === null ? null : airPerLitre(data.capture, fromS, Math.max(fromS + halfStep, rearBackS));
      return air === null ? [] : [air];
    });
    if (amounts.length === 0)
      return missing(this.id, 'The rear sensor was not seen to go lean in a fuel cut and come back.');
    return measured(this.id, median(amounts), medianInterval(Float64Array.from(amounts).sort()));
  },
};
