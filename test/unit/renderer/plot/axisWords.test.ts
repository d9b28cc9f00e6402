import { describe, expect, it } from 'vitest';
import { clockWords, momentWords, secondDigits, timeForm, timeWords } from '../../../../renderer/plot/axisWords.ts';

describe('a time on the axis', () => {
  it('is in seconds under ten minutes, then by minutes, then by hours', () => {
    expect([413, 599.9, 600, 2400, 3600].map(timeForm)).toEqual(['s', 's', 'min:s', 'min:s', 'h:min:s']);
  });

  it.each([
    [61.2, 's', 1, '61.2'],
    [61.2, 'min:s', 1, '1:01.2'],
    [61.2, 'min:s', 0, '1:01'],
    [3661.25, 'h:min:s', 2, '1:01:01.25'],
    [59.96, 'min:s', 1, '1:00.0'],
    [-2.5, 'min:s', 1, '−0:02.5'],
    [-2.5, 's', 1, '−2.5'],
    [0, 'h:min:s', 0, '0:00:00'],
  ] as const)('%d as %s with %d digits reads %s', (timeS, form, digits, words) => {
    expect(timeWords(timeS, form, digits)).toBe(words);
  });

  it('carries its unit where the figures do not tell', () => {
    expect(momentWords(61.2, 's', 1)).toBe('61.2\u00a0s');
    expect(momentWords(61.2, 'min:s', 1)).toBe('1:01.2');
  });

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
