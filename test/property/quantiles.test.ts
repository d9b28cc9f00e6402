// Quantiles without sorting are those of the sorted list, to the last bit; the platform's own sort is the oracle.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantileSorted, quantilesOf } from '../../core/statistics/quantile.ts';
import { select } from '../../core/statistics/select.ts';

const few = fc.array(fc.constantFrom(0, 0.005, 0.45, 0.5, 0.9), { minLength: 1, maxLength: 300 });
const many = fc.array(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), {
  minLength: 1,
  maxLength: 300,
});
const lists = fc.oneof(few, many);
const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b);

test('select puts the value of a place there, smaller ones before it and larger ones behind it', () => {
  fc.assert(
    fc.property(lists, fc.nat(), (values, any) => {
      const k = any % values.length;
      const moved = Float64Array.from(values);
      select(moved, k);
      expect(moved[k]).toBe(sorted(values)[k]);
      expect(Math.max(...moved.subarray(0, k + 1))).toBe(moved[k]);
      expect(Math.min(...moved.subarray(k))).toBe(moved[k]);
      expect(sorted([...moved])).toEqual(sorted(values));
    }),
  );
});

test('several quantiles of one list are those of the sorted list, and the list is left as it was', () => {
  fc.assert(
    fc.property(lists, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 5 }), (values, shares) => {
      const given = Float64Array.from(values);
      const ordered = sorted(values);
      expect(quantilesOf(given, shares)).toEqual(shares.map((share) => quantileSorted(ordered, share)));
      expect([...given]).toEqual(values);
    }),
  );
});
