import { expect, it } from 'vitest';
import { firstWords } from '../../../../../renderer/state/selectors/onTraces.ts';

it.each([
  ['Short note', 'Short note'],
  ['First line\nsecond line', 'First line'],
  ['   ', 'Empty note'],
  ['', 'Empty note'],
  ['The rear sensor follows the front one from here on', 'The rear sensor follows the front one…'],
])('%j begins with %j', (text, words) => {
  expect(firstWords(text)).toBe(words);
});

it('cuts a single long word, too', () => {
  expect(firstWords('x'.repeat(100)).length).toBeLessThanOrEqual(41);
});
