// What is found of a column while it is read: range, count and extremes of blocks, against a plain look at each number.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLOCK } from '../../core/capture/blockExtremes.ts';
import { ColumnStore } from '../../core/reading/text/columnStore.ts';

const number = fc.integer({ min: -5000, max: 5000 }).map((whole) => whole / 10);
const stretch = fc.oneof(
  fc.array(number, { minLength: 1, maxLength: 300 }),
  fc.array(fc.constant(Number.NaN), { minLength: 1, maxLength: 200 }),
  fc.array(fc.oneof(number, fc.constant(Number.NaN)), { minLength: 1, maxLength: 100 }),
);

describe('a column while it is read', () => {
  it('knows the range of its values and of each block, wherever values are missing', () => {
    const column = fc.array(stretch, { minLength: 1, maxLength: 8 }).map((parts) => parts.flat());
    const cuts = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(column, cuts, fc.integer({ min: 1, max: 4 }), (values, sizes, stride) => {
        const stage = new Float64Array(values.length * stride);
        values.forEach((value, i) => {
          stage[i * stride] = value;
        });
        const store = new ColumnStore(false);
        for (let at = 0, turn = 0; at < values.length; turn++) {
          const rows = Math.min(sizes[turn % sizes.length] ?? 1, values.length - at);
          store.take(stage, at * stride, stride, rows, 1);
          at += rows;
        }
        const { range, blocks, values: read } = store.finish();
        const finite = values.filter((value) => !Number.isNaN(value));
        expect(Array.from(read)).toEqual(values.map(Math.fround));
        expect(range.finite).toBe(finite.length);
        expect([range.min + 0, range.max + 0]).toEqual([Math.min(...finite) + 0, Math.max(...finite) + 0]);
        for (let block = 0; block * BLOCK < values.length; block++) {
          const own = values.slice(block * BLOCK, (block + 1) * BLOCK).filter((value) => !Number.isNaN(value));
          expect((blocks.low[block] ?? 0) + 0).toBe(Math.fround(Math.min(...own)) + 0);
          expect((blocks.high[block] ?? 0) + 0).toBe(Math.fround(Math.max(...own)) + 0);
        }
      }),
    );
  });
});
