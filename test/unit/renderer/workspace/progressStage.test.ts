import { describe, expect, it } from 'vitest';
import { progressStage, timeLeftWords } from '../../../../renderer/workspace/progressStage.ts';

const NBSP = '\u00a0';

describe('how much is shown of a file that is being read', () => {
  it.each([
    [0, 'nothing'],
    [999, 'nothing'],
    [1000, 'sign'],
    [1999, 'sign'],
    [2000, 'bar'],
    [9999, 'bar'],
    [10_000, 'barWithTime'],
  ])('after %d ms: %s', (elapsedMs, stage) => {
    expect(progressStage(elapsedMs)).toBe(stage);
  });
});

describe('the time left', () => {
  it.each([
    [10_000, 0.5, `about 10${NBSP}s left`],
    [10_000, 0.4, `about 15${NBSP}s left`],
    [10_000, 0.99, `about 5${NBSP}s left`],
    [20_000, 0.1, `about 3${NBSP}min left`],
  ])('after %d ms with a share of %d read', (elapsedMs, share, words) => {
    expect(timeLeftWords(elapsedMs, share)).toBe(words);
  });

  it('is not guessed from nothing', () => {
    expect(timeLeftWords(10_000, 0)).toBeNull();
    expect(timeLeftWords(10_000, Number.NaN)).toBeNull();
  });
});
