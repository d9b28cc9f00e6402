// One contract for every measure: a newcomer's file is tested before its own test is written.

import { describe, expect, test } from 'vitest';
import { MEASURES } from '../../../../core/measures/index.ts';
import { cutWindow } from '../../../../core/measures/windowData.ts';
import { banksToJudge } from '../../../../core/windows/banksToJudge.ts';
import { WINDOW_KINDS } from '../../../../core/windows/window.ts';
import { captureOf } from '../../../support/drawTrace.ts';
import { HOSTILE_CAPTURES } from '../../../support/hostileCaptures.ts';

describe.each(MEASURES.map((measure) => [measure.id, measure] as const))('%s', (id, measure) => {
  test.each(HOSTILE_CAPTURES)(
    '%s: a finite number in its interval, or a sentence why there is none',
    (_name, capture) => {
      for (const kind of WINDOW_KINDS) {
        for (const [startS, endS] of [
          [0, 60],
          [3.3, 3.31],
          [50, 500],
          [-20, -10],
        ] as const) {
          const window = { startS, endS, bank: null, kind, origin: 'byHand' } as const;
          const found = measure.compute(cutWindow(capture, window, banksToJudge(capture)[0] ?? null));
          expect(found.id).toBe(id);
          if (found.value === null) {
            expect(found.missing).toMatch(/^[A-Z].*\.$/);
            expect(found.missing).not.toMatch(/NaN|undefined|null|Infinity/);
            expect(found.interval).toBeNull();
          } else {
            expect(Number.isFinite(found.value)).toBe(true);
            expect(found.missing).toBeNull();
            expect(
              found.interval === null || (found.interval[0] <= found.value && found.value <= found.interval[1]),
            ).toBe(true);
            expect(found.interval?.every(Number.isFinite) ?? true).toBe(true);
          }
        }
      }
    },
  );

  test('explains itself to people', () => {
    expect(measure.words).toMatch(/^[A-Z]/);
    expect(measure.needs).toMatch(/\.$/);
    expect(measure.help).toMatch(/\.$/);
    expect(measure.digits).toBeGreaterThanOrEqual(0);
    expect(measure.unit).not.toBe('');
  });

  test('gives the same answer twice, and changes nothing it was given', () => {
    const values = Float64Array.from({ length: 600 }, (_, i) => (i % 9 < 4 ? 0.8 : 0.15));
    const kept = values.slice();
    const make = () =>
      captureOf([
        { role: 'upstreamO2', bank: 1, rateHz: 10, values },
        { role: 'downstreamO2', bank: 1, rateHz: 10, values: (t) => 0.6 + 0.05 * Math.sin(7 * t), seconds: 60 },
      ]);
    const window = { startS: 0, endS: 60, bank: 1, kind: 'hold', origin: 'byHand' } as const;
    const [first, second] = [make(), make()].map((capture) => measure.compute(cutWindow(capture, window, 1)));
    expect(first).toEqual(second);
    expect(values).toEqual(kept);
  });
});
