import { steadyStretches } from '../steadyStretches.ts';
import { at, type WindowKindRule } from './windowKindRule.ts';

/**
 * Steady driving: engine speed within 8 %, 1200 to 3200 1/min, vehicle above 30 km/h. The printed entry conditions of
 * two makers' monitors lie inside it (check 3.09).
 */
export const cruise: WindowKindRule = {
  kind: 'cruise',
  words: 'Cruise',
  offers: 6,
  steady: true,
  find: (track) =>
    steadyStretches(track, {
      quantity: 'rpm',
      within: 100,
      withinShare: 0.08,
      leastS: 15,
      accepts: (t, k) => at(t, 'rpm', k) >= 1200 && at(t, 'rpm', k) <= 3200 && at(t, 'speed', k) >= 30,
    }),
};
