import type { ConditionResult } from '../../conditions/condition.ts';
import type { Share } from '../../units/quantities.ts';
import { round } from '../../words/numbers.ts';
import { blockerRule } from '../blockerRules.ts';
import { costOfClearing, costOfCondemning, type DecisionCosts } from '../costs.ts';
import type { Blocker, Finding, NextTest, Reason } from '../finding.ts';
import { EVIDENCE_TESTS } from './evidenceTests.ts';
import { testRule } from './testList.ts';

/** What is known when the next test is chosen. */
export interface TestState {
  readonly finding: Finding;
  readonly probabilityNotStoring: Share | null;
  readonly blockers: readonly Blocker[];
  readonly reasons: readonly Reason[];
  readonly conditions: readonly ConditionResult[];
}

/** How many tests are offered. */
const MOST = 3;

/**
 * The tests worth making next, by what they are worth: the chance that a test puts a wrong decision right, times what that
 * decision costs, less its minutes. Tests that remove a blocker come before tests that add evidence, since without them
 * no evidence counts. Empty where nothing more is worth its minutes.
 */
export function rankTests(state: TestState, costs: DecisionCosts): NextTest[] {
  const removing = worthy(removingTests(state), state, costs);
  const adding = worthy(addingTests(state), state, costs);
  const seen = new Set<string>();
  return [...removing, ...adding]
    .filter(({ id }) => !seen.has(id) && seen.add(id))
    .slice(0, MOST)
    .map(({ id, why, chance }) => {
      const { words, minutes } = testRule(id);
      return { id, words, minutes, why: `${why} ${oddsWords(chance)}` };
    });
}

/** A test that might be made, why, and how likely it is to put the decision right. */
interface Candidate {
  readonly id: string;
  readonly why: string;
  readonly chance: Share;
}

/** One test may remove several blockers: their chances join. */
function removingTests({ blockers }: TestState): Candidate[] {
  const found = new Map<string, Candidate>();
  for (const { id, words } of blockers) {
    const { removedBy, chance } = blockerRule(id);
    const known = found.get(removedBy);
    found.set(removedBy, {
      id: removedBy,
      why: known ? `${known.why} ${words}` : words,
      chance: known ? 1 - (1 - known.chance) * (1 - chance) : chance,
    });
  }
  return [...found.values()];
}

function addingTests(state: TestState): Candidate[] {
  return EVIDENCE_TESTS.flatMap((test) => {
    const chance = test.chance(state);
    return chance === null ? [] : [{ id: test.id, why: test.why(state), chance }];
  });
}

/** Those that are worth more than they cost, the most valuable first. */
function worthy(candidates: readonly Candidate[], state: TestState, costs: DecisionCosts): Candidate[] {
  const stake = (state.probabilityNotStoring ?? 0) >= 0.5 ? costOfCondemning(costs) : costOfClearing(costs);
  const value = ({ id, chance }: Candidate) => chance * stake - (testRule(id).minutes / 60) * costs.labourHour;
  return candidates.filter((one) => value(one) > 0).sort((a, b) => value(b) - value(a));
}

function oddsWords(chance: Share): string {
  const many = chance >= 0.095;
  return `It may put the decision right in about ${round((many ? 10 : 100) * chance, 0)} of ${many ? 10 : 100} such cases.`;
}
