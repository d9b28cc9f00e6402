import type { ConditionResult } from './condition.ts';

/** Met, with the numbers. */
export function met(id: string, detail: string): ConditionResult {
  return { id, met: true, detail };
}

/** Not met, with the numbers. */
export function notMet(id: string, detail: string): ConditionResult {
  return { id, met: false, detail };
}

/** The capture does not show what is needed, with what is missing. */
export function notRecorded(id: string, detail: string): ConditionResult {
  return { id, met: null, detail };
}
