import { expect, test } from 'vitest';
import { beyondScatter, scatterSentence } from '../../../../core/compare/beyondScatter.ts';
import type { MeasurePair } from '../../../../core/compare/comparison.ts';

const pair = (interval: readonly [number, number] | null): MeasurePair => ({
  id: 'x',
  words: 'X',
  unit: '1',
  digits: 2,
  first: 1,
  second: 1.5,
  difference: 0.5,
  interval,
});

test('a difference is beyond scatter where its interval leaves out 0', () => {
  const said = (
    [
      [0.1, 0.9],
      [-0.9, -0.1],
      [-0.1, 0.9],
      [0, 0.9],
      [0.001, 0.02],
    ] as const
  ).map((ends) => beyondScatter(pair(ends)));
  expect(said).toEqual([true, true, false, false, false]);
  expect(beyondScatter(pair(null))).toBe(false);
});

test('the sentence counts those with an interval, and is left out where there are none', () => {
  expect(scatterSentence([pair([0.1, 0.9]), pair([-0.1, 0.9]), pair(null)])).toMatch(
    /^1 of 2 measures with an interval differs /,
  );
  expect(scatterSentence([pair([-0.1, 0.9])])).toMatch(/^0 of 1 measure with an interval differ /);
  expect(scatterSentence([pair(null)])).toBeNull();
});
