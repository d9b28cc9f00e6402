import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPyramid, type Extremes, extremesBetween } from '../../../../core/capture/pyramid.ts';

function none(): Extremes {
  return { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
}

/** By looking at every sample. */
function slowly(values: Float32Array | Float64Array, first: number, end: number): Extremes {
  const found = none();
  for (const value of values.slice(first, end)) {
    if (value < found.low) found.low = value;
    if (value > found.high) found.high = value;
  }
  return found;
}

describe('the pyramid of extremes', () => {
  it('has 64 samples in the first level and 8 entries a level above', () => {
    const { levels } = buildPyramid(new Float32Array(64 * 8 * 8 * 3 + 5));
    expect(levels.map(({ samples, low }) => [samples, low.length])).toEqual([
      [64, 192],
      [512, 24],
      [4096, 3],
    ]);
  });

  it('takes at most 3.6 % of the memory of 4-byte values', () => {
    const values = new Float32Array(1_000_000);
    const bytes = buildPyramid(values).levels.reduce(
      (sum, level) => sum + level.low.byteLength + level.high.byteLength,
      0,
    );
    expect(bytes / values.byteLength).toBeLessThan(0.0361);
  });

  it('has no levels for fewer than 64 samples, and still answers', () => {
    const pyramid = buildPyramid(Float32Array.of(3, 1, 2));
    expect(pyramid.levels).toHaveLength(0);
    const found = none();
    extremesBetween(pyramid, 0, 3, found);
    expect(found).toEqual({ low: 1, high: 3 });
  });

  it('finds what looking at every sample finds, for any stretch and any missing values', () => {
    const sample = fc.oneof(
      { weight: 5, arbitrary: fc.float({ noNaN: true, min: -10, max: 10 }) },
      fc.constant(Number.NaN),
    );
    fc.assert(
      fc.property(
        fc.float32Array({ minLength: 0, maxLength: 5000 }),
        fc.array(sample, { maxLength: 40 }),
        fc.nat(),
        fc.nat(),
        (random, some, a, b) => {
          const values = Float32Array.from([...random, ...some, ...random.map((value) => -value)]);
          const first = a % (values.length + 1);
          const end = b % (values.length + 1);
          const found = none();
          extremesBetween(buildPyramid(values), Math.min(first, end), Math.max(first, end), found);
          expect(found).toEqual(slowly(values, Math.min(first, end), Math.max(first, end)));
        },
      ),
    );
  });

  it('reads few entries however long the stretch is', () => {
    const values = Float32Array.from({ length: 300_000 }, (_, i) => Math.sin(i));
    let read = 0;
    const counted = new Proxy(buildPyramid(values), {
      get(target, key) {
        return key === 'values' ? countReads(target.values, () => read++) : Reflect.get(target, key);
      },
    });
    extremesBetween(counted, 1, 299_999, none());
    expect(read).toBeLessThanOrEqual(2 * 128);
  });
});

function countReads(values: Float32Array | Float64Array, count: () => void): Float32Array {
  return new Proxy(Float32Array.from(values), {
    get(target, key) {
      if (typeof key === 'string' && /^\d+$/.test(key)) count();
      return Reflect.get(target, key, target);
    },
  });
}
