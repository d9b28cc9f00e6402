// Worked values of signal kernels; the row number of the list of published checks stands in each name.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { apparentFrequency } from '../../core/signal/aliasing.ts';
import { crossCorrelationDelay, parabolaOffset } from '../../core/signal/crossCorrelation.ts';
import { hysteresisCrossings } from '../../core/signal/crossings.ts';
import { timeEdges } from '../../core/signal/edges.ts';
import { falseAlarm, lombScargle } from '../../core/signal/lombScargle.ts';
import { pathLength, pathLengthWithPlay } from '../../core/signal/pathLength.ts';
import { seriesFrom } from '../support/drawTrace.ts';

const rows = (file: string): number[][] =>
  readFileSync(new URL(`values/${file}`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').map(Number));

describe('sampling theorem, Numerical Recipes in C 13.8', () => {
  test('6.01 where a tone appears', () => {
    expect(apparentFrequency(2, 3)).toBeCloseTo(1, 12);
    expect(apparentFrequency(2, 2.5)).toBeCloseTo(0.5, 12);
    expect(apparentFrequency(3, 10)).toBeCloseTo(3, 12);
    expect(apparentFrequency(1, 2)).toBeCloseTo(1, 12);
    expect(apparentFrequency(1, 0)).toBeNaN();
  });

  test('6.02 two tones that no program can tell apart', () => {
    for (let k = 0; k < 30; k++) {
      const fast = Math.cos((2 * Math.PI * 2 * k) / 3);
      expect(Math.abs(fast - Math.cos((2 * Math.PI * apparentFrequency(2, 3) * k) / 3))).toBeLessThan(1e-12);
    }
  });
});

describe('Lomb periodogram, Numerical Recipes in C 13.8.4 and 13.8.5', () => {
  test('6.03 the table', () => {
    const input = rows('lomb-input.csv');
    const series = {
      timesS: Float64Array.from(input, ([t]) => t ?? 0),
      values: Float64Array.from(input, ([, y]) => y ?? 0),
    };
    const expected = rows('lomb-expected.csv');
    const found = lombScargle(
      series,
      expected.map(([f]) => f ?? 0),
    );
    expected.forEach(([, power, tolerance], i) => {
      expect(Math.abs((found[i] ?? 9) - (power ?? 0))).toBeLessThanOrEqual(tolerance ?? 0);
    });
  });

  test('6.04 false alarm', () => {
    expect(falseAlarm(8.868475606, 20)).toBeCloseTo(0.00281138, 7);
    expect(falseAlarm(10, 10)).toBeCloseTo(0.000453907, 8);
  });

  test('a constant, an empty series and frequency 0 have no power', () => {
    expect([...lombScargle(seriesFrom([1, 1, 1, 1], 1), [0.1])]).toEqual([0]);
    expect([...lombScargle(seriesFrom([], 1), [0.1])]).toEqual([0]);
    expect([...lombScargle(seriesFrom([1, 2, 1, 2], 1), [0])]).toEqual([0]);
  });
});

describe('delay by cross-correlation (check 6.05)', () => {
  test('the parabola through 0.80, 1.00, 0.90', () => {
    expect(parabolaOffset(0.8, 1, 0.9)).toBeCloseTo(0.166667, 6);
  });

  test('a trace and itself 0.25 s later at 100 a second: 25 steps', () => {
    const wave = (t: number) => Math.sin(2 * Math.PI * 1.1 * t) + 0.3 * Math.sin(2 * Math.PI * 0.37 * t + 1);
    const early = Float64Array.from({ length: 1000 }, (_, i) => wave(i / 100));
    const late = Float64Array.from({ length: 1000 }, (_, i) => wave(i / 100 - 0.25));
    expect(crossCorrelationDelay(early, late, -5, 45)?.steps).toBeCloseTo(25, 1);
    expect(crossCorrelationDelay(early, new Float64Array(1000), -5, 45)).toBeNull();
    expect(crossCorrelationDelay(early, late, -5, 20)).toBeNull();
  });
});

describe('crossings', () => {
  const values = [0.44, 0.46, 0.44, 0.46, 0.3, 0.5, 0.6, 0.44, 0.35, 0.29, 0.46, 0.61, 0.2];

  test('6.06 eight plain crossings of 0.45, four with a band of 0.30 and 0.60', () => {
    const series = seriesFrom(values, 1);
    expect(hysteresisCrossings(series, { low: 0.45 - 1e-9, high: 0.45 + 1e-9 })).toHaveLength(8);
    expect(hysteresisCrossings(series, { low: 0.3, high: 0.6 }).map(({ rising }) => rising)).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });

  test('6.07 sixteen crossings in 10 s are 0.8 Hz', () => {
    const square = Array.from({ length: 201 }, (_, i) => (Math.floor((i / 20 - 0.3125) / 0.625) % 2 === 0 ? 0.1 : 0.8));
    const crossings = hysteresisCrossings(seriesFrom(square, 20), { low: 0.3, high: 0.6 });
    expect(crossings).toHaveLength(16);
    expect(crossings.length / (2 * 10)).toBeCloseTo(0.8, 12);
  });
});

describe('shapes (checks 3.40 to 3.42)', () => {
  const triangles = (low: number, high: number) =>
    Array.from({ length: 201 }, (_, i) =>
      i % 20 <= 10 ? low + ((high - low) * (i % 20)) / 10 : high - ((high - low) * ((i % 20) - 10)) / 10,
    );

  test('3.40 ten triangles: 16 V and 2 V, ratio 0.125, with play and without', () => {
    expect(pathLength(triangles(0.1, 0.9))).toBeCloseTo(16, 12);
    expect(pathLength(triangles(0.6, 0.7))).toBeCloseTo(2, 12);
    expect(pathLengthWithPlay(triangles(0.1, 0.9), 0.04)).toBeCloseTo(16, 12);
    expect(pathLengthWithPlay(triangles(0.6, 0.7), 0.04)).toBeCloseTo(2, 12);
  });

  test('3.41 with time on the axis the ratio is 0.540495: why the product leaves time out', () => {
    const plane = (volts: number) => 20 * Math.hypot(0.5, volts);
    expect(plane(0.8)).toBeCloseTo(18.867962, 6);
    expect(plane(0.1)).toBeCloseTo(10.198039, 6);
    expect(plane(0.1) / plane(0.8)).toBeCloseTo(0.540495, 6);
  });

  test('3.42 a sine of 0.4 V, ten cycles: 15.974884', () => {
    const sine = Array.from({ length: 1000 }, (_, i) => 0.5 + 0.4 * Math.sin((2 * Math.PI * i) / 100));
    expect(pathLength(sine)).toBeCloseTo(15.974884, 6);
  });
});

describe('edges (check 4.33)', () => {
  const band = { low: 0.3, high: 0.6 };

  test('a ramp of 0.2 to 0.8 V in 120 ms takes 60 ms from 0.3 to 0.6 V', () => {
    const ramp = Array.from({ length: 200 }, (_, i) => 0.2 + 0.6 * Math.min(1, Math.max(0, (i / 1000 - 0.04) / 0.12)));
    const { edges, untimed } = timeEdges(seriesFrom(ramp, 1000), band);
    expect(untimed).toBe(0);
    expect(edges).toHaveLength(1);
    expect(edges[0]?.durationS).toBeCloseTo(0.06, 9);
  });

  test('a first-order step 0.1 to 0.9 V of 50 ms takes 34.657 ms', () => {
    const step = Array.from({ length: 400 }, (_, i) => (i < 50 ? 0.1 : 0.9 - 0.8 * Math.exp(-(i - 50) / 1000 / 0.05)));
    const { edges } = timeEdges(seriesFrom(step, 1000), band);
    expect(edges[0]?.durationS).toBeCloseTo(0.034657, 5);
  });

  test('an edge with too few samples is not timed but counted', () => {
    const { edges, untimed } = timeEdges(seriesFrom([0.1, 0.1, 0.8, 0.8], 10), band);
    expect(edges).toHaveLength(0);
    expect(untimed).toBe(1);
  });
});
