import type { Reason } from './finding.ts';

/** A reason from a signed weight: positive speaks for notStoring, anything else for storing. */
export function signedReason(id: string, weight: number, detail: string): Reason {
  return { id, for: weight > 0 ? 'notStoring' : 'storing', weight: Math.abs(weight), detail };
}

/** Sum of the reasons' weights as a logarithm of odds, positive for notStoring. */
export function logOddsOf(reasons: readonly Reason[]): number {
  return reasons.reduce((sum, { for: speaksFor, weight }) => sum + (speaksFor === 'notStoring' ? weight : -weight), 0);
}
