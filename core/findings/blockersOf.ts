import type { ConditionResult } from '../conditions/condition.ts';
import { CONDITIONS } from '../conditions/index.ts';
import type { WindowData } from '../measures/measure.ts';
import { BLOCKER_RULES, blockerRule } from './blockerRules.ts';
import type { Blocker } from './finding.ts';

const BLOCKER_OF = new Map(CONDITIONS.map(({ id, blocker }) => [id, blocker]));
const ORDER = new Map(BLOCKER_RULES.map(({ id }, place) => [id, place]));

/** What stands in the way of a finding on this window: conditions not met, and sensors that are not there. */
export function blockersOf(data: WindowData, conditions: readonly ConditionResult[]): Blocker[] {
  const blockers: Blocker[] = [];
  if (!data.upstream) blockers.push(blocker('noFrontSensor', null));
  if (!data.downstream) blockers.push(blocker('noRearSensor', null));
  for (const { id, met, detail } of conditions) {
    const blocks = BLOCKER_OF.get(id);
    if (met === false && blocks) blockers.push(blocker(blocks, detail));
  }
  return inOrder(blockers);
}

/** A blocker by id, with the numbers of what was found. */
export function blocker(id: string, detail: string | null): Blocker {
  const rule = blockerRule(id);
  return { id, words: detail ? `${rule.words} ${detail}` : rule.words, removedBy: rule.removedBy };
}

/** Each blocker once, in the order in which they are worked off. */
export function inOrder(blockers: readonly Blocker[]): Blocker[] {
  const first = new Map<string, Blocker>();
  for (const one of blockers) if (!first.has(one.id)) first.set(one.id, one);
  return [...first.values()].sort((a, b) => (ORDER.get(a.id) ?? 0) - (ORDER.get(b.id) ?? 0));
}
