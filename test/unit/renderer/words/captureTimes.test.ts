import { describe, expect, it } from 'vitest';
import { momentWords, stretchWords, timeForm, timeWords } from '../../../../renderer/words/captureTimes.ts';

describe('a time in a capture', () => {
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
});

describe('a stretch', () => {
  it('reads as the axis of its capture counts', () => {
    expect(stretchWords({ startS: 61.2, endS: 121.2 }, 413)).toBe('61.2 to 121.2\u00a0s');
    expect(stretchWords({ startS: 61.2, endS: 121.2 }, 2400)).toBe('1:01.2 to 2:01.2');
    expect(stretchWords({ startS: 61.2, endS: 121.2 }, 36_000)).toBe('0:01:01.2 to 0:02:01.2');
  });

  it('counts both ends as the later one asks, where the capture is not there', () => {
    expect(stretchWords({ startS: 61.2, endS: 121.2 })).toBe('61.2 to 121.2\u00a0s');
    expect(stretchWords({ startS: 590, endS: 610 })).toBe('9:50.0 to 10:10.0');
  });
});
