// Signs that depend on how long something takes, each drawn as it looks on a car and as what it must not be taken for.

import { describe, expect, test } from 'vitest';
import { noLeakSign } from '../../../../core/conditions/noLeakSign.ts';
import { MEASURES } from '../../../../core/measures/index.ts';
import { rearLife } from '../../../../core/measures/rearLife.ts';
import { cutWindow } from '../../../../core/measures/windowData.ts';
import { fuelCuts } from '../../../../core/windows/fuelCuts.ts';
import type { CaptureWindow } from '../../../../core/windows/window.ts';
import { captureOf, type DrawnChannel } from '../../../support/drawTrace.ts';

const HOLD: CaptureWindow = { startS: 20, endS: 80, bank: 1, kind: 'hold', origin: 'byHand' };
const square = (hz: number) => (t: number) => ((t * hz) % 1 < 0.5 ? 0.1 : 0.8);
const front: DrawnChannel = { role: 'upstreamO2', bank: 1, sensor: 1, rateHz: 10, seconds: 100, values: square(1.1) };
const rear = (values: (t: number) => number): DrawnChannel => ({ ...front, role: 'downstreamO2', sensor: 2, values });
const rpm = (values: (t: number) => number): DrawnChannel => ({ role: 'rpm', rateHz: 5, seconds: 100, values });

function leakSign(values: (t: number) => number, turning: (t: number) => number = () => 2300) {
  const data = cutWindow(captureOf([front, rear(values), rpm(turning)]), HOLD, 1);
  const measures = new Map(MEASURES.map((measure) => [measure.id, measure.compute(data)]));
  return noLeakSign.judge({ ...data, measures, troubleCodes: [] }).met;
}

describe('movement behind that does not follow the front', () => {
  test('is a sign of a leak where it comes in pulses', () => {
    expect(leakSign((t) => 0.5 + 0.25 * Math.sin(2 * Math.PI * 0.73 * t))).toBe(false);
  });
  test('is the trim by the rear sensor where it goes slowly back and forth', () => {
    expect(leakSign((t) => 0.5 + 0.25 * Math.sin(2 * Math.PI * 0.2 * t))).toBe(true);
  });
});

describe('a rear sensor that rests lean at speed under a balanced mixture', () => {
  const idleAt = (t: number): number => (t > 82 ? 800 : 2300);
  const at = (holdV: number, idleV: number) => leakSign((t) => (t > 82 ? idleV : holdV), idleAt);
  test('is a sign of a leak, and so where it is as lean at idle', () => {
    expect(leakSign(() => 0.1)).toBe(false);
    expect(at(0.1, 0.1)).toBe(false);
  });
  test('is none where it rests rich at idle, where a leak would let in the most air: the converter is near full', () => {
    expect(at(0.1, 0.7)).toBe(true);
  });
});

describe('trims that add more fuel at idle than at speed', () => {
  const judged = (atSpeed: number, atIdle: number) => {
    const stft: DrawnChannel = {
      role: 'stft',
      bank: 1,
      rateHz: 5,
      seconds: 100,
      values: (t) => (t > 82 ? atIdle : atSpeed),
    };
    const data = cutWindow(captureOf([front, rear(() => 0.62), rpm((t) => (t > 82 ? 800 : 2300)), stft]), HOLD, 1);
    return noLeakSign.judge({ ...data, measures: new Map(), troubleCodes: [] });
  };
  test('are a sign of false air from 4 % on, with the figure', () => {
    expect(judged(1, 6).met).toBe(false);
    expect(judged(1, 6).detail).toContain('5.0 % more fuel at idle');
  });
  test('are none where they differ by less, as they do on any car, nor where they add more at speed', () => {
    expect(judged(1, 4.5).met).toBe(true);
    expect(judged(6, 1).met).toBe(true);
  });
});

describe('a rear sensor that moves only as the capture begins', () => {
  const waking = captureOf([front, rear((t) => (t < 1 ? 0.45 - 0.3 * t : 0.15)), rpm(() => 2300)]);
  test('has shown no life', () => {
    const channel = waking.channels[1];
    expect(channel && rearLife(channel).lagAtMostS).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('a fuel cut that only speed and front sensor tell of', () => {
  const cutsOf = (lastsS: number) =>
    fuelCuts(
      captureOf([
        { ...front, values: (t) => (t > 40 && t < 40 + lastsS ? 0.05 : square(1.1)(t)) },
        rear(() => 0.6),
        rpm((t) => (t < 40 ? 2600 : Math.max(1200, 2600 - 150 * (t - 40)))),
      ]),
    );
  test('is one where the front sensor reads air for longer than the control is ever lean', () => {
    expect(cutsOf(8)).toHaveLength(1);
  });
  test('is none where it reads lean for a swing of the control', () => {
    expect(cutsOf(1)).toEqual([]);
  });
});
