// Bursts of oxygen in the front sensor, drawn as they look and as what they must not be taken for.

import { describe, expect, test } from 'vitest';
import { frontEven } from '../../../../core/conditions/frontEven.ts';
import { spellsOf } from '../../../../core/measures/spells.ts';
import { cutWindow } from '../../../../core/measures/windowData.ts';
import { captureOf, type DrawnChannel } from '../../../support/drawTrace.ts';

const SECONDS = 60;
const voltage = (values: (t: number) => number, rateHz = 20): DrawnChannel => ({
  role: 'upstreamO2',
  bank: 1,
  sensor: 1,
  rateHz,
  seconds: SECONDS,
  values,
});
const rpm = (values: (t: number) => number): DrawnChannel => ({ role: 'rpm', rateHz: 5, seconds: SECONDS, values });

function judge(...channels: DrawnChannel[]) {
  const window = { startS: 0, endS: SECONDS, bank: 1, kind: 'hold', origin: 'byHand' } as const;
  return frontEven.judge({ ...cutWindow(captureOf(channels), window, 1), measures: new Map(), troubleCodes: [] });
}

/** Rich for `share` of each second, lean for the rest. */
const swing = (share: number) => (t: number) => (t % 1 < share ? 0.8 : 0.1);
/** The swing with a dip of 0.1 s into the middle of every `nth` rich spell. */
const dipped = (nth: number) => (t: number) =>
  Math.floor(t) % nth === 0 && t % 1 >= 0.2 && t % 1 < 0.299 ? 0.1 : swing(0.5)(t);

describe('spells', () => {
  test('are as long as they were drawn, those at the edges left out', () => {
    const capture = captureOf([voltage((t) => ((t + 0.25) % 1 < 0.3 ? 0.8 : 0.1))]);
    const { upstream } = cutWindow(capture, { startS: 0, endS: SECONDS, bank: 1, kind: 'hold', origin: 'byHand' }, 1);
    const { rich, lean } = upstream ? spellsOf(upstream) : { rich: [], lean: [] };
    // Lean from 0.05 to 0.75 s of each of 60 seconds; rich from there to the next, 59 times.
    expect(rich).toHaveLength(59);
    expect(lean).toHaveLength(60);
    // A moment between two samples is known to half a step of 0.05 s at either end.
    for (const { lengthS } of rich) expect(Math.abs(lengthS - 0.3)).toBeLessThanOrEqual(0.051);
    for (const { lengthS } of lean) expect(Math.abs(lengthS - 0.7)).toBeLessThanOrEqual(0.051);
  });
});

describe('a switching front sensor', () => {
  test('that swings evenly is even, however lopsided', () => {
    expect(judge(voltage(swing(0.5))).met).toBe(true);
    expect(judge(voltage(swing(0.3))).met).toBe(true);
  });
  test('whose rich spells are cut in two is disturbed, with the count', () => {
    // 30 dips make 30 lean spells of 0.1 s against the usual 0.5 s; the rich spell in front of each is 0.2 s of 0.5 s.
    const found = judge(voltage(dipped(2)));
    expect(found.met).toBe(false);
    expect(found.detail).toMatch(/^\d\d of 1[78]\d rich and lean spells/);
  });
  test('that was disturbed twice in a minute is not: one noisy value is no misfire', () => {
    expect(judge(voltage(dipped(30))).met).toBe(true);
  });
  test('that was disturbed for a part of the time only is not: the load changed once', () => {
    expect(judge(voltage((t) => (t < 20 ? dipped(1)(t) : swing(0.5)(t)))).met).toBe(true);
  });
  test('is not judged so by an instrument that cannot follow it', () => {
    expect(judge(voltage(dipped(2), 3)).met).toBe(true);
  });
});

describe('an engine that jolts', () => {
  const jolts = rpm((t) => 2250 + (Math.floor(t * 5) % 7 < 2 ? -40 : 20));
  test('under a lean front sensor is a sign, at any instrument', () => {
    expect(judge(voltage(swing(0.35), 2.1), jolts).met).toBe(false);
    expect(judge(voltage(swing(0.35), 20), jolts).met).toBe(false);
  });
  test('under one that is lean in 22 of 36 values is none: 36 values of a balanced one show that one time in twenty', () => {
    expect(
      judge(
        voltage((t) => (Math.round(t * 0.6) % 36 < 14 ? 0.8 : 0.1), 0.6),
        jolts,
      ).met,
    ).toBe(true);
  });
  test('under a balanced one is none, nor is a lean one under a smooth engine', () => {
    expect(judge(voltage(swing(0.52), 2.1), jolts).met).toBe(true);
    expect(
      judge(
        voltage(swing(0.4), 2.1),
        rpm((t) => 2250 + 10 * Math.sin(t)),
      ).met,
    ).toBe(true);
  });
});

describe('a wideband front sensor', () => {
  const lambda = (values: (t: number) => number): DrawnChannel => ({ ...voltage(values), role: 'upstreamLambda' });
  const dither = (t: number) => 1 + 0.02 * Math.sin(6 * t);
  const bursts = (height: number) => (t: number) => dither(t) + (t % 0.7 < 0.11 ? height : 0);
  test('under a dither is even, whatever its size', () => {
    expect(judge(lambda(dither)).met).toBe(true);
    expect(judge(lambda((t) => 1 + 0.08 * Math.sin(6 * t))).met).toBe(true);
  });
  test('that goes lean in bursts of 0.1 is disturbed; of 0.03 it may be a change of load', () => {
    expect(judge(lambda(bursts(0.1))).met).toBe(false);
    expect(judge(lambda(bursts(0.03))).met).toBe(true);
  });
  test('that goes lean for a moment only is none', () => {
    expect(judge(lambda((t) => dither(t) + (t > 40 && t < 43 ? 0.15 : 0))).met).toBe(true);
  });
  test('that reads air in a fuel cut is not', () => {
    expect(judge(lambda((t) => (t > 50 ? 1.9 : dither(t)))).met).toBe(true);
  });
});

test('is not recorded without a front sensor', () => {
  expect(judge(rpm(() => 2250)).met).toBeNull();
});
