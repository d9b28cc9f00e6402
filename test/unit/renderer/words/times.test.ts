import { describe, expect, it } from 'vitest';
import { durationWords } from '../../../../renderer/words/times.ts';

const NBSP = '\u00a0';

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
