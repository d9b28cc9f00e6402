import { expect, it } from 'vitest';
import { warningRow } from '../../../../core/words/warningRow.ts';

it.each([
  [{ row: 2003, count: 1 }, 'Row 2003.'],
  [{ row: 2003, count: 540 }, 'First in row 2003.'],
  [{ row: null, count: 2 }, ''],
])('of a warning with %o says “%s”', (warning, words) => {
  expect(warningRow(warning)).toBe(words);
});
