import { expect, test } from 'vitest';
import { caseCount } from '../../../../main/setup/caseCount.ts';

test.each([
  [undefined, 4000],
  ['1', 1],
  ['800', 800],
  ['4000', 4000],
])('%s of 4000 cases are %i', (typed, cases) => {
  expect(caseCount(typed, 4000)).toBe(cases);
});

test.each(['0', '-5', '4001', '1e3', '10.5', '--help', 'all', '', ' 7'])('"%s" is no count of cases', (typed) => {
  expect(caseCount(typed, 4000)).toBeNull();
});
