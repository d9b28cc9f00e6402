import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TimeScale } from '../../../../renderer/plot/timeScale.ts';

// One known scale: 10 s over 500 px that begin at 80 px, so 20 ms a pixel.
const scale = new TimeScale({ startS: 100, endS: 110 }, 80, 500);

describe('a time scale', () => {
  it.each([
    [100, 80],
    [105, 330],
    [110, 580],
    [99, 30],
    [112, 680],
  ])('puts %d s at %d px and back', (timeS, x) => {
    expect(scale.xOf(timeS)).toBeCloseTo(x, 9);
    expect(scale.timeOf(x)).toBeCloseTo(timeS, 9);
  });

  it('says how much time a pixel holds', () => {
    expect(scale.secondsPerPixel).toBeCloseTo(0.02, 12);
  });

  it('keeps pixels on the paper', () => {
    expect([scale.clampX(0), scale.clampX(200), scale.clampX(9000)]).toEqual([80, 200, 580]);
  });

  it.each([
    [{ startS: 1, endS: 1 }, 500],
    [{ startS: 2, endS: 1 }, 500],
    [{ startS: Number.NaN, endS: 1 }, 500],
    [{ startS: 0, endS: 1 }, 0],
  ])('refuses %j over %d px', (stretch, width) => {
    expect(() => new TimeScale(stretch, 0, width)).toThrow(RangeError);
  });

  it('comes back to the same time from its pixel, in any stretch of a ten-hour capture', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 36_000, noNaN: true }),
        fc.double({ min: 0.001, max: 36_000, noNaN: true }),
        fc.integer({ min: 50, max: 8000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (startS, spanS, width, share) => {
          const any = new TimeScale({ startS, endS: startS + spanS }, 72, width);
          const timeS = startS + share * spanS;
          expect(Math.abs(any.timeOf(any.xOf(timeS)) - timeS)).toBeLessThan(any.secondsPerPixel * 1e-6 + 1e-9);
        },
      ),
    );
  });
});
