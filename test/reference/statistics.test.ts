// Worked values of statistics from handbooks and papers; the row number of the list of published checks stands in each
// name.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawBlocks, percentileInterval } from '../../core/statistics/bootstrap.ts';
import { effectiveCount } from '../../core/statistics/effectiveCount.ts';
import { clopperPearson, garwood, ratioOfCounts } from '../../core/statistics/exactIntervals.ts';
import { median } from '../../core/statistics/quantile.ts';
import { mannWhitney } from '../../core/statistics/rankTests.ts';
import { seededUniform } from '../../core/statistics/seededUniform.ts';
import { signedRank } from '../../core/statistics/signedRank.ts';
import { paired, welch } from '../../core/statistics/tTests.ts';

const INTERVALS = readFileSync(new URL('values/count-intervals.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));

describe('intervals for proportions and counts (checks 6.10 to 6.12)', () => {
  test.each(INTERVALS)('%s %s of %s at %s', (method, k, n, confidence, lower, upper, tolerance) => {
    const found =
      method === 'clopperPearson'
        ? clopperPearson(Number(k), Number(n), Number(confidence))
        : method === 'garwood'
          ? garwood(Number(k), Number(confidence))
          : ratioOfCounts(Number(k), Number(n), Number(confidence));
    expect(Math.abs(found[0] - Number(lower))).toBeLessThanOrEqual(Number(tolerance));
    expect(Math.abs(found[1] - Number(upper))).toBeLessThanOrEqual(Number(tolerance));
  });

  test('6.10 NIST/SEMATECH e-Handbook 7.2.4.1: 4 of 20 at 90 %', () => {
    const [low, high] = clopperPearson(4, 20, 0.9);
    expect(low).toBeCloseTo(0.071354, 6);
    expect(Math.abs(high - 0.401029)).toBeLessThan(2e-6);
  });

  test('6.12 rear against front crossings', () => {
    const rows = [
      [3, 80, 0.007574, 0.113604],
      [0, 80, 0, 0.047191],
      [40, 80, 0.333218, 0.73967],
    ] as const;
    for (const [rear, front, low, high] of rows) {
      const found = ratioOfCounts(rear, front);
      expect(found[0]).toBeCloseTo(low, 5);
      expect(found[1]).toBeCloseTo(high, 5);
    }
    expect(ratioOfCounts(2, 0)[1]).toBe(Number.POSITIVE_INFINITY);
  });
});

test('6.14 independent values of a first-order process', () => {
  expect(effectiveCount(1000, 0.9)).toBeCloseTo(52.632, 3);
  expect(effectiveCount(100, 0.5)).toBeCloseTo(33.333, 3);
});

describe("Student's sleep data (checks 6.20, 6.21)", () => {
  const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
  const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

  test('Welch', () => {
    const found = welch(first, second);
    expect(found?.t).toBeCloseTo(-1.860813, 6);
    expect(found?.degrees).toBeCloseTo(17.776474, 6);
    expect(found?.p).toBeCloseTo(0.0793941, 7);
    expect(found?.interval[0]).toBeCloseTo(-3.365483, 6);
    expect(found?.interval[1]).toBeCloseTo(0.205483, 6);
  });

  test('paired', () => {
    const found = paired(first, second);
    expect(found?.t).toBeCloseTo(-4.062128, 6);
    expect(found?.degrees).toBe(9);
    expect(found?.p).toBeCloseTo(0.00283289, 8);
    expect(found?.interval[0]).toBeCloseTo(-2.459886, 6);
    expect(found?.interval[1]).toBeCloseTo(-0.700114, 6);
  });

  test('nothing to test: too few values, or none that differ', () => {
    expect(welch([1], [2, 3])).toBeNull();
    expect(welch([1, 1], [1, 1])).toBeNull();
    expect(paired([1, 2], [1])).toBeNull();
    expect(paired([1, 2], [0, 1])).toBeNull();
  });
});

describe('Hollander and Wolfe 1973 (checks 6.22 to 6.24)', () => {
  const x = [0.8, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46];
  const y = [1.15, 0.88, 0.9, 0.74, 1.21];

  test('69f: Mann-Whitney, and the Hodges-Lehmann shift with its interval of 96.004 %', () => {
    const found = mannWhitney(x, y, 0.96);
    expect(found?.u).toBe(35);
    expect(found?.greater).toBeCloseTo(0.127206, 6);
    expect(found?.twoSided).toBeCloseTo(0.254412, 6);
    expect(found?.shift).toBeCloseTo(0.305, 12);
    expect(found?.interval[0]).toBeCloseTo(-0.15, 12);
    expect(found?.interval[1]).toBeCloseTo(0.76, 12);
  });

  test('29f: signed rank, and the median of the Walsh averages', () => {
    const before = [1.83, 0.5, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.3];
    const after = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];
    const found = signedRank(before.map((value, i) => value - (after[i] ?? 0)));
    expect(found?.v).toBe(40);
    expect(found?.greater).toBeCloseTo(0.01953125, 12);
    expect(found?.centre).toBeCloseTo(0.46, 12);
  });

  test('empty lists and lists beyond what is worth counting give null', () => {
    expect(mannWhitney([], [1])).toBeNull();
    expect(mannWhitney(new Float64Array(201), [1])).toBeNull();
    expect(signedRank([0, 0])).toBeNull();
  });
});

describe('6.25 all 27 resamples of 1 2 6', () => {
  const values = [1, 2, 6];
  const resamples = drawBlocks(3, 27_000, seededUniform(1));
  const drawn = Array.from({ length: resamples.draws }, (_, r) => {
    const times = resamples.times.subarray(3 * r, 3 * r + 3);
    return values.flatMap((value, i) => Array.from({ length: times[i] ?? 0 }, () => value));
  });

  test('standard error of the mean approaches √14/3', () => {
    const means = drawn.map((list) => list.reduce((a, b) => a + b, 0) / 3);
    const centre = means.reduce((a, b) => a + b, 0) / means.length;
    const error = Math.sqrt(means.reduce((sum, m) => sum + (m - centre) ** 2, 0) / means.length);
    expect(error / 1.2472191289).toBeCloseTo(1, 1.5);
  });

  test('the median takes 1, 2 and 6 in 7, 13 and 7 of 27', () => {
    const share = (of: number) => drawn.filter((list) => median(list) === of).length / drawn.length;
    expect(Math.abs(share(1) - 7 / 27)).toBeLessThan(0.01);
    expect(Math.abs(share(2) - 13 / 27)).toBeLessThan(0.01);
    expect(Math.abs(share(6) - 7 / 27)).toBeLessThan(0.01);
  });

  test('a statistic that says nothing in most resamples has no interval', () => {
    expect(percentileInterval(resamples, () => Number.NaN)).toBeNull();
  });
});
