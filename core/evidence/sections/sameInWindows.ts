// What reads the same under every window, so that the sheet says it once.

import type { ConditionResult } from '../../conditions/condition.ts';
import type { WindowScore } from '../../findings/finding.ts';
import type { MeasureValue } from '../../measures/measure.ts';

export interface Same {
  /** Conditions with the same state and the same words. */
  readonly conditions: readonly ConditionResult[];
  /** Measures without a value, for the same reason. */
  readonly missing: readonly MeasureValue[];
}

/** What all of these scores share; nothing for fewer than two. */
export function sameInAll([first, ...others]: readonly WindowScore[]): Same {
  if (first === undefined || others.length === 0) return { conditions: [], missing: [] };
  const missingIn = ({ measures }: WindowScore) => measures.filter(({ value }) => value === null);
  return {
    conditions: first.conditions.filter((one) => others.every(({ conditions }) => has(conditions, one))),
    missing: missingIn(first).filter((one) => others.every((score) => has(missingIn(score), one))),
  };
}

/** The rest of a list, in its order. */
export function without<T extends ConditionResult | MeasureValue>(same: readonly T[], all: readonly T[]): readonly T[] {
  return all.filter((one) => !has(same, one));
}

function has<T extends ConditionResult | MeasureValue>(list: readonly T[], one: T): boolean {
  return list.some((other) => other.id === one.id && words(other) === words(one));
}

function words(one: ConditionResult | MeasureValue): string {
  return 'detail' in one ? `${one.met} ${one.detail}` : `${one.value} ${one.missing}`;
}
