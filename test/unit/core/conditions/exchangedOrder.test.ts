// Which of two traces of one size leads, worked by hand: square waves of one period, shifted by a known time.

import { describe, expect, test } from 'vitest';
import { sensorsInPlace } from '../../../../core/conditions/sensorsInPlace.ts';
import { switchOrder } from '../../../../core/measures/switchOrder.ts';
import { cutWindow } from '../../../../core/measures/windowData.ts';
import { captureOf } from '../../../support/drawTrace.ts';

/** A wave with flanks of a tenth of its period, so that a moment between two samples can be told. */
const wave = (periodS: number, lagS: number, swingV: number) => (t: number) => {
  const phase = (((t - lagS) % periodS) + periodS) / periodS;
  const turn = phase - Math.floor(phase);
  const level = turn < 0.1 ? turn / 0.1 : turn < 0.5 ? 1 : turn < 0.6 ? (0.6 - turn) / 0.1 : 0;
  return 0.45 + swingV * (level - 0.5);
};

function dataOf(periodS: number, lagS: number, rearSwingV = 0.7, rateHz = 20) {
  const shared = { bank: 1, rateHz, seconds: 60 } as const;
  const capture = captureOf([
    { ...shared, role: 'upstreamO2', sensor: 1, values: wave(periodS, 0, 0.7) },
    { ...shared, role: 'downstreamO2', sensor: 2, values: wave(periodS, lagS, rearSwingV) },
  ]);
  return cutWindow(capture, { startS: 0, endS: 60, bank: 1, kind: 'hold', origin: 'byHand' }, 1);
}

const judge = (...args: Parameters<typeof dataOf>) =>
  sensorsInPlace.judge({ ...dataOf(...args), measures: new Map(), troubleCodes: [] });

describe('the order of switching', () => {
  test('0.3 s behind in a period of 1.5 s is 1.2 s to the next', () => {
    const order = switchOrder(dataOf(1.5, 0.3));
    expect(order?.behindS).toBeCloseTo(0.3, 2);
    expect(order?.aheadS).toBeCloseTo(1.2, 2);
    expect(order?.periodS).toBeCloseTo(1.5, 2);
    expect(order?.stepS).toBeCloseTo(0.05, 6);
  });
  test('is not told of a trace that switches twice as often', () => {
    const { upstream, ...rest } = dataOf(1.5, 0.3);
    const { downstream } = dataOf(0.75, 0.3);
    expect(upstream && downstream && switchOrder({ ...rest, upstream, downstream })).toBeNull();
  });
  test('is not told with fewer than six values a period, where the period may be an alias', () => {
    expect(switchOrder(dataOf(1.5, 0.3, 0.7, 3.9))).toBeNull();
    expect(switchOrder(dataOf(1.5, 0.3, 0.7, 4.1))).not.toBeNull();
  });
});

describe('a rear trace as large as the front one', () => {
  // Gas 0.25 s, a quarter of the period and a step of 0.05 s: 0.675 s in a period of 1.5 s.
  test('that follows within what gas and sensor take is in place', () => {
    expect(judge(1.5, 0.1).met).toBe(true);
    expect(judge(1.5, 0.62).met).toBe(true);
  });
  test('that would have to follow later than that leads, and the sensors are exchanged', () => {
    const found = judge(1.5, -0.3);
    expect(found.met).toBe(false);
    expect(found.detail).toContain('switches 0.30 s before the front one');
    expect(found.detail).toContain('1.20 s late');
  });
  test('that leads by less than the time between two values may only have been read sooner', () => {
    expect(judge(1.5, -0.04).met).toBe(true);
  });
  test('and is smaller is in place however late: a converter delays what it lets through', () => {
    expect(judge(1.5, 0.9, 0.4).met).toBe(true);
  });
});
