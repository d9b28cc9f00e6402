import type { Share } from '../units/quantities.ts';
import { LEAST_DOUBT } from './calibration.ts';

/** Probability of a logarithm of odds, kept away from certainty. */
export function probabilityOf(logOdds: number): Share {
  const p = 1 / (1 + Math.exp(-logOdds));
  return Math.min(1 - LEAST_DOUBT, Math.max(LEAST_DOUBT, p));
}
