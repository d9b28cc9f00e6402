// Outside oracle: scipy 1.10.1 and numpy 1.24.2 by test/reference/scipyOracle.py. Where they are installed the script
// runs again and must say what is stored; where they are not, the stored values stand in.

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { Series } from '../../core/capture/series.ts';
import { correlationAt } from '../../core/signal/crossCorrelation.ts';
import { fft } from '../../core/signal/fft.ts';
import { lombScargle } from '../../core/signal/lombScargle.ts';
import { segmentWaves, transferOver } from '../../core/signal/transferAt.ts';
import { drawBlocks, percentileInterval } from '../../core/statistics/bootstrap.ts';
import { betaQuantile } from '../../core/statistics/incompleteBeta.ts';
import { chiSquareQuantile } from '../../core/statistics/incompleteGamma.ts';
import { quantileSorted, sortedCopy } from '../../core/statistics/quantile.ts';
import { mannWhitney } from '../../core/statistics/rankTests.ts';
import { seededUniform } from '../../core/statistics/seededUniform.ts';
import { signedRank } from '../../core/statistics/signedRank.ts';
import { studentTwoSided } from '../../core/statistics/studentT.ts';
import { paired, welch } from '../../core/statistics/tTests.ts';

const numbers = z.array(z.number());
const stored = z
  .object({
    quantiles: z.object({ values: numbers, shares: numbers, expected: numbers }),
    fourier: z.object({ values: numbers, real: numbers, imaginary: numbers }),
    correlation: z.object({ a: numbers, b: numbers, lags: numbers, expected: numbers }),
    lomb: z.object({ t: numbers, y: numbers, frequencies: numbers, expected: numbers }),
    transfer: z.object({
      rate: z.number(),
      hz: z.number(),
      segments: z.number(),
      lengthS: z.number(),
      x: numbers,
      y: numbers,
      gain: z.number(),
      coherence: z.number(),
      lagS: z.number(),
      welchCoherence: z.number(),
    }),
    bootstrap: z.object({ values: numbers, expected: numbers }),
    tests: z.object({
      a: numbers,
      b: numbers,
      c: numbers,
      welch: numbers,
      paired: numbers,
      mann: numbers,
      signed: numbers,
    }),
    distributions: z.object({ beta: z.array(numbers), chiSquare: z.array(numbers), student: z.array(numbers) }),
  })
  .parse(JSON.parse(readFileSync(new URL('values/scipy.json', import.meta.url), 'utf8')));

/** What the script says here and now, or null where scipy is not installed. */
function askScipy(): unknown {
  try {
    execFileSync('/usr/bin/python3', ['-c', 'import scipy, numpy'], { stdio: 'ignore' });
  } catch {
    return null;
  }
  const script = fileURLToPath(new URL('scipyOracle.py', import.meta.url));
  return JSON.parse(execFileSync('/usr/bin/python3', [script], { encoding: 'utf8', maxBuffer: 1 << 26 }));
}

function closeTo(found: ArrayLike<number>, expected: readonly number[], digits: number): void {
  expect(found.length).toBe(expected.length);
  for (const [i, value] of expected.entries()) expect(found[i]).toBeCloseTo(value, digits);
}

const LIVE = askScipy();

describe('scipy', () => {
  test('says today what is stored, where it is installed', () => {
    if (LIVE === null) return expect(Object.keys(stored).length).toBe(8);
    for (const [part, values] of Object.entries(z.record(z.string(), z.record(z.string(), z.unknown())).parse(LIVE)))
      expect(roughly(values), part).toEqual(
        roughly(z.record(z.string(), z.unknown()).parse(Reflect.get(stored, part))),
      );
  });

  test('quantiles, definition 7', () => {
    const { values, shares, expected } = stored.quantiles;
    const sorted = sortedCopy(values);
    closeTo(
      shares.map((share) => quantileSorted(sorted, share)),
      expected,
      12,
    );
  });

  test('Fourier transform', () => {
    const { values, real, imaginary } = stored.fourier;
    const re = Float64Array.from(values);
    const im = new Float64Array(values.length);
    fft(re, im);
    closeTo(re, real, 12);
    closeTo(im, imaginary, 12);
  });

  test('normalised cross-correlation', () => {
    const { a, b, lags, expected } = stored.correlation;
    const [x, y] = [Float64Array.from(a), Float64Array.from(b)];
    closeTo(
      lags.map((lag) => correlationAt(x, y, lag)),
      expected,
      12,
    );
  });

  test('Lomb-Scargle at uneven times', () => {
    const { t, y, frequencies, expected } = stored.lomb;
    closeTo(lombScargle({ timesS: Float64Array.from(t), values: Float64Array.from(y) }, frequencies), expected, 9);
  });

  test('gain, coherence and lag at one frequency', () => {
    const { rate, hz, segments, lengthS, x, y, gain, coherence, lagS, welchCoherence } = stored.transfer;
    const series = (values: readonly number[]): Series => ({
      timesS: Float64Array.from(values, (_, i) => i / rate),
      values: Float64Array.from(values),
    });
    const stretches = Array.from({ length: segments }, (_, k) => ({ startS: k * lengthS, endS: (k + 1) * lengthS }));
    const found = transferOver(segmentWaves(series(x), series(y), hz, stretches), hz);
    expect(found?.gain).toBeCloseTo(gain, 9);
    expect(found?.coherence).toBeCloseTo(coherence, 9);
    expect(found?.lagS).toBeCloseTo(lagS, 9);
    // Welch's estimate takes neither the slope out nor lies on our frequency exactly: near, not equal.
    expect(Math.abs((found?.coherence ?? 0) - welchCoherence)).toBeLessThan(0.1);
  });

  test('percentile bootstrap of a mean, blocks of one value', () => {
    const { values, expected } = stored.bootstrap;
    const resamples = drawBlocks(values.length, 4000, seededUniform(7));
    const found = percentileInterval(resamples, (times) => {
      let sum = 0;
      for (let i = 0; i < times.length; i++) sum += (times[i] ?? 0) * (values[i] ?? 0);
      return sum / values.length;
    });
    // Two runs of chance agree within a few per cent of the interval's width.
    const width = (expected[1] ?? 0) - (expected[0] ?? 0);
    expect(Math.abs((found?.[0] ?? 9) - (expected[0] ?? 0))).toBeLessThan(0.06 * width);
    expect(Math.abs((found?.[1] ?? 9) - (expected[1] ?? 0))).toBeLessThan(0.06 * width);
  });

  test('tests of means and ranks', () => {
    const { a, b, c, ...expected } = stored.tests;
    const w = welch(a, b);
    closeTo([w?.t ?? 0, w?.p ?? 0], expected.welch, 10);
    const p = paired(a, c);
    closeTo([p?.t ?? 0, p?.p ?? 0], expected.paired, 10);
    const m = mannWhitney(a, b);
    closeTo([m?.u ?? 0, m?.twoSided ?? 0, m?.greater ?? 0], expected.mann, 10);
    const s = signedRank(c.map((value, i) => value - (a[i] ?? 0)));
    closeTo([s?.v ?? 0, s?.twoSided ?? 0, s?.greater ?? 0], expected.signed, 10);
  });

  test('quantiles of beta and chi-square, tails of Student', () => {
    const { beta, chiSquare, student } = stored.distributions;
    for (const [p = 0, a = 0, b = 0, x = 0] of beta) expect(betaQuantile(p, a, b)).toBeCloseTo(x, 11);
    for (const [p = 0, k = 0, x = 0] of chiSquare) expect(chiSquareQuantile(p, k) / x).toBeCloseTo(1, 11);
    for (const [t = 0, d = 0, p = 0] of student) expect(studentTwoSided(t, d) / p).toBeCloseTo(1, 9);
  });
});

/** The same object with its numbers cut to 9 digits, so that another build of the same library still agrees. */
function roughly(value: unknown): unknown {
  if (typeof value === 'number') return Number(value.toPrecision(9));
  if (Array.isArray(value)) return value.map(roughly);
  if (value && typeof value === 'object')
    return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, roughly(part)]));
  return value;
}
