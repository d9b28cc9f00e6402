import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlap } from '../../../../../renderer/state/selectors/offers.ts';

const stretch = fc
  .tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 1, max: 500 }))
  .map(([startS, length]) => ({ startS, endS: startS + length }));

describe('the overlap of two stretches', () => {
  it.each([
    [0, 10, 0, 10, 1],
    [0, 10, 5, 15, 1 / 3],
    [0, 10, 10, 20, 0],
    [0, 10, 30, 40, 0],
    [0, 10, 0, 8, 0.8],
  ])('%d to %d and %d to %d', (a, b, c, d, share) => {
    expect(overlap({ startS: a, endS: b }, { startS: c, endS: d })).toBeCloseTo(share, 12);
  });

  it('is the same both ways, and between 0 and 1', () => {
    fc.assert(
      fc.property(stretch, stretch, (one, other) => {
        const share = overlap(one, other);
        expect(share).toBe(overlap(other, one));
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }),
    );
  });
});
