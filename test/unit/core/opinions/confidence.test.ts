import { expect, test } from 'vitest';
import { confidenceWords } from '../../../../core/opinions/confidence.ts';

// Intelligence Community Directive 203 (2 January 2015), D.6.e.2.a: the middle of each of its steps.
test.each([
  [3, 'almost no chance'],
  [12, 'very unlikely'],
  [32, 'unlikely'],
  [50, 'roughly even chance'],
  [67, 'likely'],
  [87, 'very likely'],
  [97, 'almost certain'],
])('%i per cent is %s', (percent, words) => {
  expect(confidenceWords(percent)).toBe(words);
});

test('an end that two steps share belongs to the upper one', () => {
  expect([5, 20, 45, 55, 80, 95].map(confidenceWords)).toEqual([
    'very unlikely',
    'unlikely',
    'roughly even chance',
    'likely',
    'very likely',
    'almost certain',
  ]);
});
