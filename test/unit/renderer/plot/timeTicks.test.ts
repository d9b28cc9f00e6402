import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fineTimeStep, TIME_STEPS, timeStep, timeTicks } from '../../../../renderer/plot/timeTicks.ts';

const LABEL_PX = 90;

describe('the step of a time axis', () => {
  it.each([
    [0.05, 1000, 0.005],
    [1, 1000, 0.1],
    [10, 1000, 1],
    [60, 1000, 10],
    [120, 1000, 15],
    [413, 1000, 60],
    [2400, 1000, 300],
    [36_000, 1000, 3600],
  ])('is for %d s over %d px %d s', (spanS, width, step) => {
    expect(timeStep(spanS, width, LABEL_PX)).toBe(step);
  });

  it('is one that people count in: 1, 2, 5 by powers of ten, 15, 30 s, minutes, hours', () => {
    for (const step of TIME_STEPS.filter((each) => each <= 10)) {
      expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)));
    }
    expect(TIME_STEPS.filter((each) => each > 10)).toEqual([
      15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 21_600, 43_200, 86_400,
    ]);
  });

  it('gives four to ten ticks on 800 px or more, and labels that do not overlap on any width', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 36_000, noNaN: true }),
        fc.integer({ min: 800, max: 4000 }),
        fc.double({ min: 0, max: 36_000, noNaN: true }),
        (spanS, width, startS) => {
          const step = timeStep(spanS, width, LABEL_PX);
          const ticks = timeTicks({ startS, endS: startS + spanS }, step);
          // A stretch of ten steps may touch eleven ticks when both ends are one.
          expect(ticks.length).toBeLessThanOrEqual(11);
          expect(ticks.length).toBeGreaterThanOrEqual(Math.floor(spanS / step));
          expect(spanS / step).toBeGreaterThanOrEqual(3.5);
          expect((step / spanS) * width).toBeGreaterThanOrEqual(LABEL_PX * (1 - 1e-6));
        },
      ),
    );
  });

  it('does not change while panning: it knows nothing of where the stretch begins', () => {
    expect(timeStep.length).toBe(3);
  });
});

describe('ticks', () => {
  it('stand on whole steps, both ends included, without rounding noise', () => {
    expect(timeTicks({ startS: 0, endS: 1 }, 0.2)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
    expect(timeTicks({ startS: 61.2, endS: 121.2 }, 15)).toEqual([75, 90, 105, 120]);
    expect(timeTicks({ startS: 0.1, endS: 0.4 }, 0.1)).toEqual([0.1, 0.2, 0.3, 0.4]);
  });

  it('have fine divisions that divide every step evenly', () => {
    for (const step of TIME_STEPS) {
      const count = step / fineTimeStep(step);
      expect(Math.abs(count - Math.round(count))).toBeLessThan(1e-6);
      expect(Math.round(count)).toBeGreaterThanOrEqual(2);
      expect(Math.round(count)).toBeLessThanOrEqual(6);
    }
  });
});
