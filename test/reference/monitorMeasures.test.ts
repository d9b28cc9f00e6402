// Measures of the dual-sensor catalyst monitor on shapes whose answer is known by construction; the row number of the
// list of published checks stands in each name.

import { describe, expect, test } from 'vitest';
import type { Capture } from '../../core/capture/capture.ts';
import { MEASURES } from '../../core/measures/index.ts';
import type { MeasureValue } from '../../core/measures/measure.ts';
import { cutWindow } from '../../core/measures/windowData.ts';
import { captureOf } from '../support/drawTrace.ts';

const triangle = (low: number, high: number, hz: number) => (timeS: number) => {
  const phase = (timeS * hz) % 1;
  return low + (high - low) * (phase < 0.5 ? 2 * phase : 2 - 2 * phase);
};

function pair(front: (t: number) => number, rear: (t: number) => number, seconds = 10): Capture {
  return captureOf([
    { role: 'upstreamO2', bank: 1, sensor: 1, rateHz: 100, seconds, values: front },
    { role: 'downstreamO2', bank: 1, sensor: 2, rateHz: 100, seconds, values: rear },
  ]);
}

function measure(capture: Capture, id: string): MeasureValue | undefined {
  const window = { startS: 0, endS: capture.durationS, bank: 1, kind: 'hold', origin: 'byHand' } as const;
  const data = cutWindow(capture, window, 1);
  return MEASURES.find((one) => one.id === id)?.compute(data);
}

describe('shapes', () => {
  const calm = pair(triangle(0.1, 0.9, 1), triangle(0.6, 0.7, 1));

  test('3.40 ten triangles of 0.1 to 0.9 V against ten of 0.60 to 0.70 V: path 0.125, swing 0.125, switching 0', () => {
    expect(measure(calm, 'pathRatio')?.value).toBeCloseTo(0.125, 9);
    expect(measure(calm, 'amplitudeRatio')?.value).toBeCloseTo(0.125, 2);
    expect(measure(calm, 'switchRatio')?.value).toBe(0);
    expect(measure(calm, 'upstreamSwitchHz')?.value).toBeCloseTo(1, 2);
  });

  test('3.43 a constant rear sensor: every ratio 0, none missing', () => {
    const flat = pair(triangle(0.1, 0.9, 1), () => 0.62);
    for (const id of ['switchRatio', 'amplitudeRatio', 'fastSwingRatio', 'pathRatio', 'breakthroughShare'])
      expect(measure(flat, id)?.value, id).toBeCloseTo(0, 12);
  });

  test('3.44 a constant front sensor: every ratio missing, with a reason', () => {
    const flat = pair(() => 0.45, triangle(0.2, 0.8, 1));
    for (const id of [
      'switchRatio',
      'amplitudeRatio',
      'fastSwingRatio',
      'pathRatio',
      'waveGain',
      'breakthroughShare',
      'lagS',
    ]) {
      expect(measure(flat, id)?.value, id).toBeNull();
      expect(measure(flat, id)?.missing, id).toMatch(/^[A-Z].*\.$/);
    }
  });

  test('3.01, 3.02 a rear sensor that follows: ratios near 1', () => {
    const dead = pair(triangle(0.1, 0.9, 1), (t) => triangle(0.1, 0.9, 1)(t + 9.7), 40);
    expect(measure(dead, 'switchRatio')?.value).toBeCloseTo(1, 1);
    expect(measure(dead, 'amplitudeRatio')?.value).toBeCloseTo(1, 1);
    expect(measure(dead, 'waveGain')?.value).toBeCloseTo(1, 2);
    expect(measure(dead, 'waveCoherence')?.value).toBeCloseTo(1, 3);
  });

  test('3.04 the lag of a rear sensor that follows an uneven control 0.3 s later', () => {
    const wander = (t: number) => Math.sin(2 * Math.PI * (0.9 * t + 0.35 * Math.sin(0.8 * t)));
    const late = pair(
      (t) => 0.5 + 0.4 * wander(t),
      (t) => 0.5 + 0.3 * wander(t - 0.3),
      40,
    );
    expect(measure(late, 'lagS')?.value).toBeCloseTo(0.3, 2);
  });
});

describe('6.01 what a slow instrument cannot count is missing, what survives is not', () => {
  const slow = captureOf([
    {
      role: 'upstreamO2',
      bank: 1,
      sensor: 1,
      rateHz: 3,
      seconds: 60,
      values: (t) => 0.5 + 0.4 * Math.sin(2 * Math.PI * 2 * t),
    },
    {
      role: 'downstreamO2',
      bank: 1,
      sensor: 2,
      rateHz: 3,
      seconds: 60,
      values: (t) => 0.6 + 0.1 * Math.sin(2 * Math.PI * 2 * t),
    },
    { role: 'rpm', rateHz: 1, seconds: 60, values: () => 2250 },
  ]);

  test.each([
    'upstreamSwitchHz',
    'downstreamSwitchHz',
    'switchRatio',
    'lagS',
    'upstreamCrossings',
    'breakthroughShare',
  ])('%s is missing, and the reason names the rates', (id) => {
    const found = measure(slow, id);
    expect(found?.value).toBeNull();
    expect(found?.missing).toMatch(/3\.0 new values a second|too few values/);
  });

  test.each(['amplitudeRatio', 'fastSwingRatio', 'upstreamRichShare', 'downstreamMeanV', 'downstreamSpreadV'])(
    '%s is still there, with its interval',
    (id) => {
      const found = measure(slow, id);
      expect(found?.value).not.toBeNull();
      expect(found?.interval).not.toBeNull();
    },
  );
});
