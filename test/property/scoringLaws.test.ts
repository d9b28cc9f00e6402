// Laws that hold for any pair of sensors, whatever they measured.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Capture } from '../../core/capture/capture.ts';
import { frontEven } from '../../core/conditions/frontEven.ts';
import { sensorsInPlace } from '../../core/conditions/sensorsInPlace.ts';
import { MEASURES } from '../../core/measures/index.ts';
import type { MeasureValue } from '../../core/measures/measure.ts';
import { cutWindow } from '../../core/measures/windowData.ts';
import { hysteresisCrossings } from '../../core/signal/crossings.ts';
import { pathLength, pathLengthWithPlay } from '../../core/signal/pathLength.ts';
import { seriesFrom } from '../support/drawTrace.ts';
import { type DrivenPair, pairAt, pairCapture } from '../support/drivenPair.ts';

const anyPair: fc.Arbitrary<DrivenPair> = fc.record({
  seed: fc.integer({ min: 1, max: 1e9 }),
  seconds: fc.constant(40),
  hz: fc.double({ min: 0.5, max: 2.2, noNaN: true }),
  through: fc.double({ min: 0, max: 1, noNaN: true }),
  lagS: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
});

function measuresOf(capture: Capture, startS: number, endS: number): Map<string, MeasureValue> {
  const data = cutWindow(capture, { startS, endS, bank: 1, kind: 'hold', origin: 'byHand' }, 1);
  return new Map(MEASURES.map((measure) => [measure.id, measure.compute(data)]));
}

describe('time', () => {
  test('adding a constant to all times changes nothing', () => {
    fc.assert(
      fc.property(anyPair, fc.integer({ min: 1, max: 400 }), (pair, quarters) => {
        const shift = quarters / 4;
        const here = measuresOf(pairCapture(pair, 25), 0, 40);
        const there = measuresOf(pairCapture(pair, 25, shift), shift, shift + 40);
        for (const [id, { value, interval }] of here) {
          const other = there.get(id);
          if (value === null) expect(other?.value, id).toBeNull();
          else expect(other?.value, id).toBeCloseTo(value, 5);
          if (interval) expect(other?.interval?.[0], id).toBeCloseTo(interval[0], 4);
        }
      }),
      { numRuns: 12 },
    );
  });

  test('sampling the same signal twice as fast changes no count', () => {
    fc.assert(
      fc.property(anyPair, (pair) => {
        const { front, rear } = pairAt(pair);
        for (const wave of [front, rear]) {
          const coarse = Array.from({ length: 801 }, (_, i) => wave(i / 20));
          const fine = coarse.flatMap((value, i) => [value, (value + (coarse[i + 1] ?? value)) / 2]);
          const band = { low: 0.3, high: 0.6 };
          const one = hysteresisCrossings(seriesFrom(coarse, 20), band);
          const two = hysteresisCrossings(seriesFrom(fine, 40), band);
          expect(two).toHaveLength(one.length);
          one.forEach(({ timeS, rising }, i) => {
            expect(two[i]?.timeS).toBeCloseTo(timeS, 9);
            expect(two[i]?.rising).toBe(rising);
          });
        }
      }),
    );
  });
});

describe('noise', () => {
  const levels = fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 1, max: 9 })), { minLength: 2, maxLength: 40 });
  const noise = fc.infiniteStream(fc.double({ min: -0.14, max: 0.14, noNaN: true }));

  test('below the hysteresis band changes no count', () => {
    fc.assert(
      fc.property(levels, noise, (steps, stream) => {
        const clean = steps.flatMap(([high, dwell]) => Array.from({ length: dwell }, () => (high ? 0.76 : 0.14)));
        const noisy = clean.map((value) => value + (stream.next().value ?? 0));
        const band = { low: 0.3, high: 0.6 };
        const count = (values: readonly number[]) => hysteresisCrossings(seriesFrom(values, 10), band).length;
        expect(count(noisy)).toBe(count(clean));
      }),
    );
  });

  test('below the play leaves the path of a calm trace at nothing, and never makes a path longer than it is', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 60 }), (values) => {
        expect(pathLengthWithPlay(values, 0)).toBeCloseTo(pathLength(values), 9);
        expect(pathLengthWithPlay(values, 0.1)).toBeLessThanOrEqual(pathLength(values) + 1e-9);
        expect(
          pathLengthWithPlay(
            values.map((value) => 0.5 + 0.09 * value),
            0.1,
          ),
        ).toBe(0);
      }),
    );
  });
});

describe('exchanged sensors', () => {
  /** The same capture with the names of front and rear exchanged. */
  function exchanged(capture: Capture): Capture {
    return {
      ...capture,
      channels: capture.channels.map((channel) => {
        if (channel.role === 'upstreamO2') return { ...channel, role: 'downstreamO2', sensor: 2 };
        return channel.role === 'downstreamO2' ? { ...channel, role: 'upstreamO2', sensor: 1 } : channel;
      }),
    };
  }

  function inPlace(capture: Capture): boolean | null {
    const data = cutWindow(capture, { startS: 0, endS: capture.durationS, bank: 1, kind: 'hold', origin: 'byHand' }, 1);
    return sensorsInPlace.judge({ ...data, measures: new Map(), troubleCodes: [] }).met;
  }

  test('are recognised behind a converter that stores, and sensors in place are left alone', () => {
    fc.assert(
      fc.property(anyPair, fc.double({ min: 0, max: 0.45, noNaN: true }), (pair, through) => {
        const capture = pairCapture({ ...pair, through }, 25);
        expect(inPlace(capture)).not.toBe(false);
        expect(inPlace(exchanged(capture))).toBe(false);
      }),
      { numRuns: 40 },
    );
  });

  test('are recognised behind a dead one by which of them comes first, and sensors in place are left alone', () => {
    // Gas and a quick sensor follow within a third of a second; the control of exchanged sensors is slow.
    const swings = fc.record({
      hz: fc.double({ min: 0.2, max: 1, noNaN: true }),
      lagS: fc.double({ min: 0.1, max: 0.33, noNaN: true }),
    });
    fc.assert(
      fc.property(anyPair, swings, (pair, { hz, lagS }) => {
        const capture = pairCapture({ ...pair, seconds: 80, hz, lagS, through: 1 }, 25);
        expect(inPlace(capture)).not.toBe(false);
        expect(inPlace(exchanged(capture))).toBe(false);
      }),
      { numRuns: 40 },
    );
  });
});

test('a control that swings by itself, within a tenth of a period as even as it likes, is never called disturbed', () => {
  fc.assert(
    fc.property(anyPair, fc.constantFrom(2, 8, 10, 25, 100), (pair, rateHz) => {
      const data = cutWindow(
        pairCapture(pair, rateHz),
        { startS: 0, endS: 40, bank: 1, kind: 'hold', origin: 'byHand' },
        1,
      );
      expect(frontEven.judge({ ...data, measures: new Map(), troubleCodes: [] }).met).not.toBe(false);
    }),
  );
});

test('a longer window never widens an interval on a stationary signal, within its own statistics', () => {
  const ratios = new Map<string, number[]>();
  for (let seed = 1; seed <= 16; seed++) {
    const capture = pairCapture({ seed, seconds: 80, hz: 1.3, through: 0.3, lagS: 0.3 }, 20);
    const short = measuresOf(capture, 0, 20);
    const long = measuresOf(capture, 0, 80);
    for (const [id, { interval }] of short) {
      const other = long.get(id)?.interval;
      if (!interval || !other || !(interval[1] > interval[0]) || id.endsWith('Crossings')) continue;
      ratios.set(id, [...(ratios.get(id) ?? []), (other[1] - other[0]) / (interval[1] - interval[0])]);
    }
  }
  expect(ratios.size).toBeGreaterThan(10);
  // A count's interval grows with the count, so counts are left out; their rates are in.
  for (const [id, list] of ratios) expect(list.reduce((a, b) => a + b, 0) / list.length, id).toBeLessThan(1);
});
