import type { Share } from '../units/quantities.ts';
import { CALIBRATION } from './calibration.ts';

/** Probability of a logarithm of odds, kept away from certainty. */
export function probabilityOf(logOdds: number): Share {
  const { leastDoubt } = CALIBRATION.decided;
  const p = 1 / (1 + Math.exp(-logOdds));
  return Math.min(1 - leastDoubt, Math.max(leastDoubt, p));
}
