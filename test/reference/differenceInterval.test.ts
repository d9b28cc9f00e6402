// Newcombe, Statistics in Medicine 17 (1998) 873-890: limits of the difference of two proportions by method 10, table II,
// his contrasts (a), (b) and (e), from memory. Wilson's score limits are written out here, so that nothing of it is ours.

import { describe, expect, test } from 'vitest';
import { type Bounded, differenceInterval } from '../../core/statistics/differenceInterval.ts';

const Z = 1.959964;

function wilson(hits: number, trials: number): Bounded {
  const share = hits / trials;
  const middle = share + (Z * Z) / (2 * trials);
  const half = Z * Math.sqrt((share * (1 - share)) / trials + (Z * Z) / (4 * trials * trials));
  const scale = 1 + (Z * Z) / trials;
  return { value: share, interval: [(middle - half) / scale, (middle + half) / scale] };
}

describe('the interval of a difference', () => {
  test.each([
    ['56/70 less 48/80', [56, 70], [48, 80], 0.0524, 0.3339],
    ['9/10 less 3/10', [9, 10], [3, 10], 0.1705, 0.809],
    ['5/56 less 0/29', [5, 56], [0, 29], -0.0381, 0.1926],
  ] as const)('%s', (_words, [hits, trials], [otherHits, otherTrials], low, high) => {
    const found = differenceInterval(wilson(otherHits, otherTrials), wilson(hits, trials));
    expect(found[0]).toBeCloseTo(low, 4);
    expect(found[1]).toBeCloseTo(high, 4);
  });

  test('of two means with even intervals is the usual one: 3 and 4 make 5', () => {
    const [low, high] = differenceInterval({ value: 10, interval: [7, 13] }, { value: 12, interval: [8, 16] });
    expect(low).toBeCloseTo(-3, 12);
    expect(high).toBeCloseTo(7, 12);
  });
});
