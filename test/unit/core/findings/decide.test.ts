import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blocker } from '../../../../core/findings/blockersOf.ts';
import { decide } from '../../../../core/findings/decide.ts';
import type { Reason } from '../../../../core/findings/finding.ts';

const against = (weight: number): Reason[] => [{ id: 'fastSwing', for: 'notStoring', weight, detail: 'drawn' }];
const good = (weight: number): Reason[] => [{ id: 'fastSwing', for: 'storing', weight, detail: 'drawn' }];

test('odds of 20 to 1 are 95 in a hundred', () => {
  expect(decide(against(Math.log(20)), [], null).probabilityNotStoring).toBeCloseTo(20 / 21, 6);
});

test('a strong sum settles it either way, a feeble one calls it weak', () => {
  expect(decide(against(5), [], null).finding).toBe('notStoring');
  expect(decide(good(5), [], null).finding).toBe('storing');
  expect(decide(good(0.5), [], null).finding).toBe('weak');
});

test('while a blocker stands it cannot be told, though the traces keep their odds', () => {
  expect(decide(against(5), [blocker('leak', null)], null)).toEqual({
    finding: 'cannotTell',
    probabilityNotStoring: decide(against(5), [], null).probabilityNotStoring,
  });
});

test('behind exchanged sensors the traces mean nothing and no odds are given', () => {
  expect(decide(good(5), [blocker('sensorsExchanged', null)], null)).toEqual({
    finding: 'cannotTell',
    probabilityNotStoring: null,
  });
});

test('behind a rear sensor that may be dead a calm trace says little, and a lively one still more than nothing', () => {
  const unproven = [blocker('rearNotProven', null)];
  const calm = decide(good(9), unproven, null).probabilityNotStoring ?? Number.NaN;
  const lively = decide(against(9), unproven, null).probabilityNotStoring ?? Number.NaN;
  expect(calm).toBeGreaterThan(0.03);
  expect(calm).toBeLessThan(0.4);
  expect(lively).toBeGreaterThan(0.4);
  expect(lively).toBeLessThan(decide(against(9), [], null).probabilityNotStoring ?? 0);
});

test('a trouble code alone is no evidence of storage', () => {
  expect(decide([{ id: 'catalystCode', for: 'notStoring', weight: 9, detail: 'drawn' }], [], null)).toEqual({
    finding: 'cannotTell',
    probabilityNotStoring: null,
  });
});

test('a fit that leaves a passing converter open condemns none, and one that leaves a failed one open clears none', () => {
  const condemned = decide(against(5), [], [null, 0.7]);
  expect(condemned.finding).toBe('notStoring');
  expect(condemned).toEqual(decide(against(5), [], null));
  for (const open of [
    [null, 0.9],
    [0.2, null],
    [null, null],
  ] as const) {
    const held = decide(against(5), [], open);
    expect(held.finding).toBe('weak');
    expect(held.probabilityNotStoring).toBeGreaterThan(0.9);
    expect(held.probabilityNotStoring).toBeLessThan(condemned.probabilityNotStoring ?? 0);
  }
  expect(decide(good(5), [], [0.3, null]).finding).toBe('storing');
  expect(decide(good(5), [], [0.02, null]).finding).toBe('weak');
  expect(decide(good(5), [], [null, 0.9]).finding).toBe('weak');
});

test('what a fit leaves open never turns the probability round, and is not added to what a rear sensor leaves open', () => {
  fc.assert(
    fc.property(fc.double({ min: -9, max: 9, noNaN: true }), (sum) => {
      const reasons = sum > 0 ? against(sum) : good(-sum);
      const open = decide(reasons, [], [null, null]).probabilityNotStoring ?? Number.NaN;
      const closed = decide(reasons, [], null).probabilityNotStoring ?? Number.NaN;
      expect(Math.sign(open - 0.4)).toBe(Math.sign(closed - 0.4));
      expect(Math.abs(open - 0.4)).toBeLessThanOrEqual(Math.abs(closed - 0.4));
      const unproven = [blocker('rearNotProven', null)];
      expect(decide(reasons, unproven, [null, null])).toEqual(decide(reasons, unproven, null));
    }),
  );
});
