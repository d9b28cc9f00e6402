import { expect, test } from 'vitest';
import type { MeasurePair } from '../../../../core/compare/comparison.ts';
import { partGiven } from '../../../../core/compare/neitherGives.ts';

const pair = (words: string, first: number | null, second: number | null): MeasurePair => ({
  id: words,
  words,
  unit: '1',
  digits: 2,
  first,
  second,
  difference: null,
  interval: null,
});

test('measures that neither window gives are named in one sentence, the others stay in their order', () => {
  const pairs = [pair('Lag', null, null), pair('Swing', 0.5, null), pair('Storage', null, null), pair('Path', null, 1)];
  const { given, neither } = partGiven(pairs);
  expect(given.map(({ words }) => words)).toEqual(['Swing', 'Path']);
  expect(neither).toBe('Neither window gives: Lag; Storage.');
  expect(partGiven(given).neither).toBeNull();
});
