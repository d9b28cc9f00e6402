// What reads the same under every window of a capture, so that the sheet says it once.

import type { ConditionResult } from '../../conditions/condition.ts';
import type { WindowScore } from '../../findings/finding.ts';
import type { MeasureValue } from '../../measures/measure.ts';

export interface Same {
  /** Conditions that have the same state and words wherever they were asked. */
  readonly conditions: readonly ConditionResult[];
  /** Measures that lack a value for the same reason wherever they lack one. */
  readonly missing: readonly MeasureValue[];
}

/** What these scores share; nothing that only one of them says. */
export function sameInAll(scores: readonly WindowScore[]): Same {
  return {
    conditions: alike(scores.flatMap(({ conditions }) => conditions)),
    missing: alike(scores.flatMap(({ measures }) => measures.filter(({ value }) => value === null))),
  };
}

/** The rest of a list, in its order. */
export function without<T extends Said>(same: readonly T[], all: readonly T[]): readonly T[] {
  const ids = new Set(same.map(({ id }) => id));
  return all.filter(({ id }) => !ids.has(id));
}

type Said = ConditionResult | MeasureValue;

/** One of each id that is there more than once, and says the same every time. */
function alike<T extends Said>(all: readonly T[]): readonly T[] {
  const byId = new Map<string, T[]>();
  for (const one of all) byId.set(one.id, [...(byId.get(one.id) ?? []), one]);
  return [...byId.values()].flatMap(([first, ...others]) =>
    first !== undefined && others.length > 0 && others.every((other) => words(other) === words(first)) ? [first] : [],
  );
}

function words(one: Said): string {
  return 'detail' in one ? `${one.met} ${one.detail}` : (one.missing ?? '');
}
