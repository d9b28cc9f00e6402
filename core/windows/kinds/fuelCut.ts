import { fuelCuts } from '../fuelCuts.ts';
import type { WindowKindRule } from './windowKindRule.ts';

/** Seconds before the cut that show where the rear sensor came from, and after it, in which the converter empties. */
const BEFORE_S = 3;
const AFTER_S = 12;

/** A coast-down with fuel cut and the return of fuel: proof of life for the rear sensor, and a measure of storage. */
export const fuelCut: WindowKindRule = {
  kind: 'fuelCut',
  words: 'Fuel cut',
  offers: 8,
  steady: false,
  find: (_track, capture) =>
    fuelCuts(capture).map(({ startS, endS }) => ({
      startS: Math.max(0, startS - BEFORE_S),
      endS: Math.min(capture.durationS, endS + AFTER_S),
    })),
};
