import { expect, test } from 'vitest';
import { blocker } from '../../../../core/findings/blockersOf.ts';
import { decide } from '../../../../core/findings/decide.ts';
import type { Reason } from '../../../../core/findings/finding.ts';

const against = (weight: number): Reason[] => [{ id: 'fastSwing', for: 'notStoring', weight, detail: 'drawn' }];
const good = (weight: number): Reason[] => [{ id: 'fastSwing', for: 'storing', weight, detail: 'drawn' }];

test('odds of 20 to 1 are 95 in a hundred', () => {
  expect(decide(against(Math.log(20)), []).probabilityNotStoring).toBeCloseTo(20 / 21, 6);
});

test('a strong sum settles it either way, a feeble one calls it weak', () => {
  expect(decide(against(5), []).finding).toBe('notStoring');
  expect(decide(good(5), []).finding).toBe('storing');
  expect(decide(good(0.5), []).finding).toBe('weak');
});

test('while a blocker stands it cannot be told, though the traces keep their odds', () => {
  expect(decide(against(5), [blocker('leak', null)])).toEqual({
    finding: 'cannotTell',
    probabilityNotStoring: decide(against(5), []).probabilityNotStoring,
  });
});

test('behind exchanged sensors the traces mean nothing and no odds are given', () => {
  expect(decide(good(5), [blocker('sensorsExchanged', null)])).toEqual({
    finding: 'cannotTell',
    probabilityNotStoring: null,
  });
});

test('behind a rear sensor that may be dead a calm trace says little, and a lively one still more than nothing', () => {
  const unproven = [blocker('rearNotProven', null)];
  const calm = decide(good(9), unproven).probabilityNotStoring ?? Number.NaN;
  const lively = decide(against(9), unproven).probabilityNotStoring ?? Number.NaN;
  expect(calm).toBeGreaterThan(0.03);
  expect(calm).toBeLessThan(0.4);
  expect(lively).toBeGreaterThan(0.4);
  expect(lively).toBeLessThan(decide(against(9), []).probabilityNotStoring ?? 0);
});

test('a trouble code alone is no evidence of storage', () => {
  expect(decide([{ id: 'catalystCode', for: 'notStoring', weight: 9, detail: 'drawn' }], [])).toEqual({
    finding: 'cannotTell',
    probabilityNotStoring: null,
  });
});
