// The generator of the simulation against the numbers of its authors' reference implementation (xoshiro128starstar.c,
// version 1.1, D. Blackman and S. Vigna, public domain), as several public test suites print them for the state 1 2 3 4.

import { expect, test } from 'vitest';
import { xoshiro128 } from '../../core/simulation/random.ts';

test('xoshiro128** from the state 1 2 3 4', () => {
  const next = xoshiro128([1, 2, 3, 4]);
  expect(Array.from({ length: 10 }, next)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});
