// NIST Statistical Reference Datasets, univariate summary statistics (check 6.30, 6.31). Certified values and data of
// Lew, Mavro and Michelso in values/; NumAcc1 to 4 by their published rule. Lottery and PiDigits are not at hand here.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { moments } from '../../core/statistics/moments.ts';

const read = (file: string): string => readFileSync(new URL(`values/${file}`, import.meta.url), 'utf8');

const CERTIFIED = new Map(
  read('nist-univariate.csv')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [name = '', n, mean, deviation, lagOne] = line.split(',');
      return [
        name,
        { n: Number(n), mean: Number(mean), deviation: Number(deviation), lagOne: Number(lagOne) },
      ] as const;
    }),
);

const alternating = (first: number, low: number, high: number): number[] => [
  first,
  ...Array.from({ length: 500 }, () => [low, high]).flat(),
];

/** Data, and the relative error that a careful sum in double precision may leave in the deviation. */
const DATA: readonly (readonly [string, readonly number[], number])[] = [
  ['Lew', read('nist-lew.txt').trim().split(/\s+/).map(Number), 1e-13],
  ['Mavro', read('nist-mavro.txt').trim().split(/\s+/).map(Number), 1e-11],
  ['Michelso', read('nist-michelso.txt').trim().split(/\s+/).map(Number), 1e-12],
  ['NumAcc1', [10000001, 10000003, 10000002], 1e-13],
  ['NumAcc2', alternating(1.2, 1.1, 1.3), 1e-13],
  ['NumAcc3', alternating(1000000.2, 1000000.1, 1000000.3), 1e-8],
  ['NumAcc4', alternating(10000000.2, 10000000.1, 10000000.3), 1e-7],
];

describe('NIST StRD univariate sets', () => {
  test.each(DATA)('%s: mean, deviation and lag-one autocorrelation as certified', (name, values, tolerance) => {
    const certified = CERTIFIED.get(name);
    const found = moments(values);
    expect(found.count).toBe(certified?.n);
    expect(Math.abs(found.mean / (certified?.mean ?? 0) - 1)).toBeLessThan(1e-14);
    expect(Math.abs(found.deviation / (certified?.deviation ?? 0) - 1)).toBeLessThan(tolerance);
    expect(Math.abs(found.lagOne / (certified?.lagOne ?? 0) - 1)).toBeLessThan(Math.max(1e-12, 10 * tolerance));
  });

  test('the one-pass textbook formula fails on NumAcc4: the set can tell careful sums from careless ones', () => {
    const values = alternating(10000000.2, 10000000.1, 10000000.3);
    const sum = values.reduce((a, b) => a + b, 0);
    const squares = values.reduce((a, b) => a + b * b, 0);
    const careless = Math.sqrt((squares - (sum * sum) / values.length) / (values.length - 1));
    expect(Math.abs(careless / 0.1 - 1) < 1e-3).toBe(false);
  });
});
