// Fuel cuts drawn by hand, so that every moment at which a sensor falls or comes back is known beforehand.

import { describe, expect, test } from 'vitest';
import { fillAir } from '../../../../core/measures/fillAir.ts';
import { fillS } from '../../../../core/measures/fillS.ts';
import type { Measure } from '../../../../core/measures/measure.ts';
import { recoveryAir } from '../../../../core/measures/recoveryAir.ts';
import { recoveryS } from '../../../../core/measures/recoveryS.ts';
import { cutWindow } from '../../../../core/measures/windowData.ts';
import { captureOf } from '../../../support/drawTrace.ts';

/** Time from one cut to the next, the first of which begins at this second too. */
const EVERY_S = 30;

interface Course {
  /** Seconds of each cut, and when after its start the front sensor falls and is back, and the rear one. */
  readonly cutS: number;
  readonly frontLeanS: number;
  readonly frontBackS: number;
  readonly rearLeanS: number;
  readonly rearBackS: number;
}

/** A cut so short that the search for the return begins before the front sensor has fallen. */
const SHORT: Course = { cutS: 1.2, frontLeanS: 0.4, frontBackS: 2, rearLeanS: 0.9, rearBackS: 4 };

/** What one cut after the other gives: 2400 1/min, 20 % load, sensors that read 0.8 V and 0.05 V. */
function measured(measure: Measure, course: Course, { cuts = 1, frontHz = 10 } = {}) {
  const seconds = EVERY_S * (cuts + 1);
  const since = (timeS: number) => (timeS < EVERY_S ? -1 : (timeS + 1e-9) % EVERY_S);
  const inCut = (timeS: number) => since(timeS) >= 0 && since(timeS) < course.cutS;
  const level = (leanS: number, backS: number) => (timeS: number) =>
    since(timeS) >= leanS && since(timeS) < backS ? 0.05 : 0.8;
  const at = { rateHz: 10, seconds };
  const capture = captureOf([
    { role: 'rpm', ...at, values: () => 2400 },
    { role: 'load', ...at, values: () => 20 },
    { role: 'throttle', ...at, values: (t) => (inCut(t) ? 0 : 15) },
    { role: 'fuelStatus', ...at, values: (t) => (inCut(t) ? 4 : 2) },
    {
      role: 'upstreamO2',
      bank: 1,
      sensor: 1,
      ...at,
      rateHz: frontHz,
      values: level(course.frontLeanS, course.frontBackS),
    },
    { role: 'downstreamO2', bank: 1, sensor: 2, ...at, values: level(course.rearLeanS, course.rearBackS) },
  ]);
  const window = { startS: 0, endS: seconds, bank: 1, kind: 'mixed', origin: 'byHand' } as const;
  return measure.compute(cutWindow(capture, window, 1));
}

describe('a cut of little more than a second', () => {
  test('the return is counted from when the front sensor came back, not from when it had not yet fallen', () => {
    expect(measured(recoveryS, SHORT).value).toBeCloseTo(2, 6);
  });

  test('20 fillings a second of 1.184 g/L at 20 % load: 4.736 g/L a second for two seconds', () => {
    expect(measured(recoveryAir, SHORT).value).toBeCloseTo(9.472, 3);
  });

  test('the rear sensor falls half a second behind the front one', () => {
    expect(measured(fillS, SHORT).value).toBeCloseTo(0.5, 6);
    expect(measured(fillAir, SHORT).value).toBeCloseTo(2.368, 3);
  });
});

test('an interval in time is as wide as the steps of both sensors leave it open', () => {
  const slow = { ...SHORT, cutS: 4, frontLeanS: 1, rearLeanS: 2, frontBackS: 6, rearBackS: 9 };
  const { value, interval } = measured(recoveryS, slow, { frontHz: 1 });
  expect(value).toBeCloseTo(3, 6);
  expect(interval?.[0]).toBeCloseTo(1.9, 6);
  expect(interval?.[1]).toBeCloseTo(4.1, 6);
});

test('a median has an interval of 95 % by order statistics from six cuts on, and no sooner: 1 - 2 / 2^5 is 94 %', () => {
  for (const measure of [fillAir, recoveryAir]) {
    expect(measured(measure, SHORT, { cuts: 5 }).interval, measure.id).toBeNull();
    expect(measured(measure, SHORT, { cuts: 6 }).interval, measure.id).not.toBeNull();
  }
});

test('without a rear sensor that went lean there is nothing to time, and the measure says so', () => {
  const calm = { ...SHORT, rearLeanS: 0, rearBackS: 0 };
  for (const measure of [recoveryS, recoveryAir, fillS, fillAir]) {
    const { value, missing } = measured(measure, calm);
    expect(value, measure.id).toBeNull();
    expect(missing, measure.id).toMatch(/not .*seen to/);
  }
});
