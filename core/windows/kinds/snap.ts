import { snaps } from '../snaps.ts';
import type { WindowKindRule } from './windowKindRule.ts';

const BEFORE_S = 3;
const AFTER_S = 8;

/** A snap of the throttle while standing: rich, then lean; wakes both sensors. */
export const snap: WindowKindRule = {
  kind: 'snap',
  words: 'Snap',
  offers: 6,
  steady: false,
  find: (_track, capture) =>
    snaps(capture).map(({ startS, endS }) => ({
      startS: Math.max(0, startS - BEFORE_S),
      endS: Math.min(capture.durationS, endS + AFTER_S),
    })),
};
