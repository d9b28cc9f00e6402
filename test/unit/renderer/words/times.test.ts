import { describe, expect, it } from 'vitest';
import { durationWords, momentWords, stretchWords } from '../../../../renderer/words/times.ts';

const NBSP = '\u00a0';

describe('times of a capture', () => {
  it.each([
    [61.24, `61.2${NBSP}s`],
    [599.94, `599.9${NBSP}s`],
    [600, '10:00.0'],
    [1449.96, '24:10.0'],
    [3600, '1:00:00.0'],
  ])('%d s', (timeS, words) => {
    expect(momentWords(timeS)).toBe(words);
  });

  it('gives both ends of a stretch in the form of the later one', () => {
    expect(stretchWords({ startS: 61.2, endS: 121.2 })).toBe(`61.2 to 121.2${NBSP}s`);
    expect(stretchWords({ startS: 590, endS: 610 })).toBe('09:50.0 to 10:10.0');
  });
});

describe('how long something lasts', () => {
  it.each([
    [0.84, `0.8${NBSP}s`],
    [60, `60${NBSP}s`],
    [453, `7${NBSP}min 33${NBSP}s`],
    [2400, `40${NBSP}min`],
    [9600, `2${NBSP}h 40${NBSP}min`],
  ])('%d s', (durationS, words) => {
    expect(durationWords(durationS)).toBe(words);
  });
});
