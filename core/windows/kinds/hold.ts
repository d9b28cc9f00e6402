import { steadyStretches } from '../steadyStretches.ts';
import { at, type WindowKindRule } from './windowKindRule.ts';

/**
 * An engine held at a raised, steady speed while the vehicle stands. 1700 to 3100 1/min is taken so that a hold that
 * was meant to be 2000 to 2500 is found also where the foot or the tachometer was off (common practice, no source).
 * Where vehicle speed was not recorded, it cannot be told from a cruise, and is called a hold.
 */
export const hold: WindowKindRule = {
  kind: 'hold',
  words: 'Hold',
  offers: 6,
  steady: true,
  find: (track) =>
    steadyStretches(track, {
      quantity: 'rpm',
      within: 150,
      withinShare: 0.06,
      leastS: 12,
      accepts: (t, k) => at(t, 'rpm', k) >= 1700 && at(t, 'rpm', k) <= 3100 && !(at(t, 'speed', k) > 3),
    }),
};
