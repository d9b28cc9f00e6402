import type { ConditionResult } from '../../conditions/condition.ts';
import type { Blocker, Finding, NextTest } from '../finding.ts';
import { testRule } from './testList.ts';

/** How many tests are offered. */
const MOST = 3;

/** Tests worth making next: first those that remove blockers, in the order of the blockers, then those that add evidence. */
export function nextTestsFor(
  finding: Finding,
  blockers: readonly Blocker[],
  conditions: readonly ConditionResult[],
): NextTest[] {
  const tests = new Map<string, NextTest>();
  const add = (id: string, why: string): void => {
    const { words, minutes } = testRule(id);
    if (!tests.has(id)) tests.set(id, { id, words, why, minutes });
  };
  for (const { removedBy, words } of blockers) add(removedBy, words);
  if (finding === 'cannotTell' && blockers.length === 0) add('hold', 'Nothing recorded so far can be judged.');
  if (finding === 'weak') {
    add('holdLonger', 'The measures lie between the two; a longer hold narrows them.');
    add('fuelCutCoast', 'The return from a fuel cut shows the storage from the other side.');
    add('thermal', 'Temperatures may tip the balance a little.');
  }
  const slow = conditions.find(({ id, met }) => id === 'samplingFast' && met === false);
  if (slow) add('fasterInstrument', slow.detail);
  if (finding === 'notStoring') {
    add('leakCheck', 'Before a converter is bought, a leak is ruled out by hand: the traces alone cannot.');
    add('thermal', 'A pair of temperatures supports the finding or questions it.');
  }
  return [...tests.values()].slice(0, MOST);
}
