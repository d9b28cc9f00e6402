import { describe, expect, it } from 'vitest';
import { brierScore, calibrationError, rocArea, shareOf } from '../../../../../core/simulation/evaluation/rates.ts';

describe('the area under the receiver operating characteristic', () => {
  it('is the share of pairs in the right order, ties half: worked by hand', () => {
    expect(rocArea([3, 4], [1, 2])).toBe(1);
    expect(rocArea([1, 2], [3, 4])).toBe(0);
    expect(rocArea([1, 3], [2])).toBe(0.5);
    expect(rocArea([2, 2], [2])).toBe(0.5);
    // Pairs: 0.8 beats 0.1 and 0.4 and ties 0.8; 0.35 beats 0.1 only: (2.5 + 1) of 6.
    expect(rocArea([0.8, 0.35], [0.1, 0.4, 0.8])).toBeCloseTo(3.5 / 6, 12);
  });

  it('agrees with counting every pair', () => {
    const positives = Array.from({ length: 40 }, (_, i) => (i * 7919) % 23);
    const negatives = Array.from({ length: 55 }, (_, i) => (i * 104729) % 19);
    let pairs = 0;
    for (const p of positives) for (const n of negatives) pairs += p > n ? 1 : p === n ? 0.5 : 0;
    expect(rocArea(positives, negatives)).toBeCloseTo(pairs / (40 * 55), 12);
  });

  it('is not a number where one side is missing', () => {
    expect(rocArea([], [1])).toBeNaN();
  });
});

describe('scores of forecasts', () => {
  it('Brier: mean square distance, worked by hand', () => {
    const forecasts = [
      { probability: 0.9, happened: true },
      { probability: 0.2, happened: false },
      { probability: 0.6, happened: false },
    ];
    expect(brierScore(forecasts)).toBeCloseTo((0.01 + 0.04 + 0.36) / 3, 12);
  });

  it('calibration error: 0 where each bin comes true as often as it says, and the distance where not', () => {
    const tenth = (happened: boolean) => ({ probability: 0.1, happened });
    expect(calibrationError([tenth(true), ...Array.from({ length: 9 }, () => tenth(false))])).toBeCloseTo(0, 12);
    expect(calibrationError([tenth(true), tenth(true)])).toBeCloseTo(0.9, 12);
  });

  it('a share of nothing is no number', () => {
    expect(shareOf([], () => true)).toBeNaN();
    expect(shareOf([1, 2, 3, 4], (n) => n > 1)).toBe(0.75);
  });
});
