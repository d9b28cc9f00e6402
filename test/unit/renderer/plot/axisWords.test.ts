import { describe, expect, it } from 'vitest';
import { clockWords, secondDigits } from '../../../../renderer/plot/axisWords.ts';

describe('a time on the axis', () => {
  it('has as many digits as a pixel can tell apart', () => {
    expect([2, 1, 0.4, 0.1, 0.04, 0.001, 1e-9].map(secondDigits)).toEqual([0, 0, 1, 1, 2, 3, 4]);
  });
});

describe('the clock', () => {
  it.each([
    ['2031-05-06T14:02:26.0', 61.4, 1, '14:03:27.4'],
    ['2031-05-06T14:02:26+02:00', 61.4, 0, '14:03:27'],
    ['2031-05-06T23:59:50Z', 15, 0, '00:00:05'],
    ['2031-05-06T09:05', 0, 0, '09:05:00'],
  ])('%s plus %d s reads with %d digits %s', (start, timeS, digits, words) => {
    expect(clockWords(start, timeS, digits)).toBe(words);
  });

  it('is not invented where the file had none', () => {
    expect(clockWords(null, 3, 1)).toBeNull();
    expect(clockWords('2031-05-06', 3, 1)).toBeNull();
  });
});
