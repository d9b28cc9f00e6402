import { steadyStretches } from '../steadyStretches.ts';
import { at, type WindowKindRule } from './windowKindRule.ts';

/** Warm or cold idle, standing. A second look only: a converter may cool at idle (common practice, no source). */
export const idle: WindowKindRule = {
  kind: 'idle',
  words: 'Idle',
  offers: 3,
  steady: true,
  find: (track) =>
    steadyStretches(track, {
      quantity: 'rpm',
      within: 120,
      withinShare: 0.12,
      leastS: 15,
      accepts: (t, k) => at(t, 'rpm', k) >= 400 && at(t, 'rpm', k) <= 1250 && !(at(t, 'speed', k) > 3),
    }),
};
