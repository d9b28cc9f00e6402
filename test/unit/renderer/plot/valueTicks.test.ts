import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { niceRange, niceStep, stepDigits, valueStep, valueTicks } from '../../../../renderer/plot/valueTicks.ts';

describe('the step of a vertical axis', () => {
  it.each([
    [0, 1, 150, 0.2],
    [0, 1, 60, 0.5],
    [0, 3000, 160, 500],
    [-10, 10, 120, 5],
    [20, 100, 400, 10],
    [0, 4000, 42, 2000],
    [0, 100, 42, 50],
    [0, 4000, 30, 5000],
  ])('is for %d to %d over %d px %d', (low, high, height, step) => {
    expect(valueStep(low, high, height, 24)).toBe(step);
  });

  it('is 1, 2 or 5 by a power of ten and leaves at most ten ticks room', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 1e5, noNaN: true }),
        fc.integer({ min: 20, max: 900 }),
        (span, height) => {
          const step = valueStep(0, span, height, 24);
          expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)));
          expect(span / step).toBeLessThanOrEqual(10 + 1e-6);
        },
      ),
    );
  });

  it('survives a range without extent', () => {
    expect(niceStep(0)).toBe(1);
    expect(niceStep(Number.NaN)).toBe(1);
    expect(niceStep(Number.POSITIVE_INFINITY)).toBe(1);
  });
});

describe('ticks', () => {
  it('stand on whole steps without rounding noise and without a negative zero', () => {
    expect(valueTicks(0, 1, 0.2)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    const around = valueTicks(-0.2, 0.2, 0.1);
    expect(around).toEqual([-0.2, -0.1, 0, 0.1, 0.2]);
    expect(Object.is(around[2], 0)).toBe(true);
  });

  it('are told apart by as many digits as their step needs', () => {
    expect([5, 1, 0.5, 0.2, 0.05].map(stepDigits)).toEqual([0, 0, 1, 1, 2]);
  });
});

describe('a range moved outwards', () => {
  it('begins and ends on whole steps', () => {
    expect(niceRange(31, 92)).toEqual([20, 100]);
    expect(niceRange(700, 2860)).toEqual([500, 3000]);
  });

  it('has an extent even where nothing changes', () => {
    expect(niceRange(88, 88)).toEqual([87, 89]);
  });

  it('holds what it was made for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
        (low, span) => {
          const [from, to] = niceRange(low, low + span);
          expect(from).toBeLessThanOrEqual(low + 1e-6 * span);
          expect(to).toBeGreaterThanOrEqual(low + span - 1e-6 * span);
        },
      ),
    );
  });
});
