import { weightOf } from './calibration.ts';
import type { Evidence } from './evidence.ts';
import type { Reason } from './finding.ts';
import { REASON_RULES } from './reasons/index.ts';
import { signedReason } from './signedReason.ts';

/** A reason that weighs less than this says nothing, and is not said. */
const LEAST_WEIGHT = 0.05;

/** Every reason the evidence gives, strongest first. */
export function drawReasons(evidence: Evidence): Reason[] {
  const reasons: Reason[] = [];
  for (const rule of REASON_RULES) {
    const seen = rule.look(evidence);
    if (!seen) continue;
    const weight = weightOf(rule.id, seen.value);
    if (Math.abs(weight) >= LEAST_WEIGHT) reasons.push(signedReason(rule.id, weight, seen.detail));
  }
  return strongestFirst(reasons);
}

/** A sorted copy. */
export function strongestFirst(reasons: readonly Reason[]): Reason[] {
  return [...reasons].sort((a, b) => b.weight - a.weight);
}

/** Whether any reason rests on the sensors themselves; a trouble code alone is no evidence of storage. */
export function restOnSensors(reasons: readonly Reason[]): boolean {
  return reasons.some(({ id }) => id !== 'catalystCode' && id !== 'thermal');
}
