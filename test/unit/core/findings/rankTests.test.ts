import { describe, expect, test } from 'vitest';
import { BLOCKER_RULES } from '../../../../core/findings/blockerRules.ts';
import { blocker } from '../../../../core/findings/blockersOf.ts';
import { costOfClearing, costOfCondemning, USUAL_COSTS } from '../../../../core/findings/costs.ts';
import { chanceOfTurning, EVIDENCE_TESTS } from '../../../../core/findings/nextTests/evidenceTests.ts';
import { rankTests, type TestState } from '../../../../core/findings/nextTests/rankTests.ts';
import { TEST_LIST } from '../../../../core/findings/nextTests/testList.ts';

const undecided: TestState = { finding: 'weak', probabilityNotStoring: 0.6, blockers: [], reasons: [], conditions: [] };
const ids = (state: TestState, costs = USUAL_COSTS) => rankTests(state, costs).map(({ id }) => id);

describe('chanceOfTurning', () => {
  test('a test no better than what is known turns nothing', () => {
    expect(chanceOfTurning(0.9, 0.8, 0)).toBe(0);
    expect(chanceOfTurning(0.1, 0.9, 0)).toBe(0);
  });

  test('a perfect test puts the guess right as often as it is wrong', () => {
    expect(chanceOfTurning(0.7, 1, 0)).toBeCloseTo(0.3, 12);
    expect(chanceOfTurning(0.3, 1, 0)).toBeCloseTo(0.3, 12);
  });

  test('a test that speaks clearly in half of the cases puts half of the wrong guesses right', () => {
    expect(chanceOfTurning(0.96, 0.9, 0.5)).toBeCloseTo(0.02, 12);
    expect(chanceOfTurning(0.04, 0.9, 0.5)).toBeCloseTo(0.02, 12);
  });

  test('is the same for either side, and largest where nothing is known', () => {
    for (const p of [0.1, 0.3, 0.5])
      expect(chanceOfTurning(p, 0.95, 0.5)).toBeCloseTo(chanceOfTurning(1 - p, 0.95, 0.5), 12);
    expect(chanceOfTurning(0.5, 0.95, 0.5)).toBeGreaterThan(chanceOfTurning(0.7, 0.95, 0.5));
  });
});

describe('costs', () => {
  test('condemning a sound converter is the worse error', () => {
    expect(costOfCondemning(USUAL_COSTS)).toBeGreaterThan(costOfClearing(USUAL_COSTS));
  });
});

describe('rankTests', () => {
  test('offers three at most, each once, with a reason and its minutes', () => {
    const blockers = BLOCKER_RULES.map(({ id }) => blocker(id, null));
    const tests = rankTests({ ...undecided, finding: 'cannotTell', blockers }, USUAL_COSTS);
    expect(tests).toHaveLength(3);
    expect(new Set(tests.map(({ id }) => id)).size).toBe(3);
    for (const { words, why, minutes } of tests) {
      expect(words).toMatch(/\.$/);
      expect(why).toMatch(/in about \d+ of 100? such cases\.$/);
      expect(minutes).toBeGreaterThan(0);
    }
  });

  test('what removes a blocker comes before what adds evidence', () => {
    const state: TestState = {
      ...undecided,
      finding: 'cannotTell',
      blockers: [blocker('frontLazy', null), blocker('leak', null)],
    };
    expect(ids(state).slice(0, 2).sort()).toEqual(['frontSensorCheck', 'leakCheck']);
  });

  test('one test that removes two blockers is worth more than each alone', () => {
    const two: TestState = {
      ...undecided,
      finding: 'cannotTell',
      blockers: [blocker('leak', null), blocker('frontWeak', null), blocker('frontLazy', null)],
    };
    expect(ids(two)[0]).toBe('frontSensorCheck');
  });

  test('a fuel cut is asked for only where none is in the evidence', () => {
    expect(ids(undecided)).toContain('fuelCutCoast');
    const seen = { id: 'recovery', for: 'storing', weight: 1, detail: '' } as const;
    expect(ids({ ...undecided, reasons: [seen] })).not.toContain('fuelCutCoast');
  });

  test('where a hold alone points one way but settles nothing, a fuel cut is still worth its minutes', () => {
    expect(ids({ ...undecided, probabilityNotStoring: 0.955 })).toContain('fuelCutCoast');
    expect(ids({ ...undecided, finding: 'notStoring', probabilityNotStoring: 0.99 })).not.toContain('fuelCutCoast');
  });

  test('a clear finding asks for little: only what could still overturn it', () => {
    expect(ids({ ...undecided, finding: 'storing', probabilityNotStoring: 0.01 })).toEqual([]);
  });

  test('every blocker and every evidence test names a test that exists', () => {
    const known = new Set(TEST_LIST.map(({ id }) => id));
    for (const { removedBy, chance } of BLOCKER_RULES) {
      expect(known).toContain(removedBy);
      expect(chance).toBeGreaterThan(0);
      expect(chance).toBeLessThan(1);
    }
    for (const { id } of EVIDENCE_TESTS) expect(known).toContain(id);
  });
});
