import { describe, expect, test } from 'vitest';
import { compareWindows } from '../../../../core/compare/compareWindows.ts';
import type { CaptureWindow } from '../../../../core/windows/window.ts';
import { captureOf } from '../../../support/drawTrace.ts';
import { pairCapture } from '../../../support/drivenPair.ts';
import { HOSTILE_CAPTURES } from '../../../support/hostileCaptures.ts';

const window = (startS: number, endS: number, more: Partial<CaptureWindow> = {}): CaptureWindow => ({
  startS,
  endS,
  bank: 1,
  kind: 'hold',
  origin: 'byHand',
  ...more,
});
const pair = { seconds: 60, hz: 1.2, lagS: 0.3 };

describe('compareWindows', () => {
  test('sets the measures of both windows side by side, second minus first', () => {
    const before = pairCapture({ ...pair, seed: 1, through: 0.9 }, 20);
    const after = pairCapture({ ...pair, seed: 2, through: 0.1 }, 20);
    const { pairs, unlike, sentence } = compareWindows(
      { capture: before, window: window(0, 60) },
      { capture: after, window: window(0, 60) },
    );
    const swing = pairs.find(({ id }) => id === 'fastSwingRatio');
    expect(swing?.difference).toBeCloseTo((swing?.second ?? 0) - (swing?.first ?? 0), 12);
    expect(swing?.difference).toBeLessThan(-0.5);
    expect(unlike).toEqual([]);
    expect(sentence).toBe('The conditions of both windows were alike, as far as they were recorded.');
  });

  test('a repair shows beyond scatter in the swing ratio; two windows of the same state do not', () => {
    const swingOf = (through: number) => {
      const { pairs } = compareWindows(
        { capture: pairCapture({ ...pair, seed: 1, through: 0.9 }, 20), window: window(0, 60) },
        { capture: pairCapture({ ...pair, seed: 2, through }, 20), window: window(0, 60) },
      );
      return pairs.find(({ id }) => id === 'fastSwingRatio');
    };
    expect(swingOf(0.1)?.interval?.[1]).toBeLessThan(0);
    const [low, high] = swingOf(0.9)?.interval ?? [1, -1];
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
  });

  test('windows that share a stretch of a capture have no interval: they are not independent', () => {
    const capture = pairCapture({ ...pair, seed: 1, through: 0.9 }, 20);
    const told = (startS: number) =>
      compareWindows({ capture, window: window(0, 30) }, { capture, window: window(startS, 60) }).pairs.filter(
        ({ interval }) => interval !== null,
      ).length;
    expect(told(20)).toBe(0);
    expect(told(30)).toBeGreaterThan(0);
  });

  test('a measure that one side lacks has no difference', () => {
    const capture = pairCapture({ ...pair, seed: 1, through: 0.9 }, 20);
    const { pairs } = compareWindows({ capture, window: window(0, 60) }, { capture, window: window(0, 0.2) });
    const swing = pairs.find(({ id }) => id === 'fastSwingRatio');
    expect(swing?.first).not.toBeNull();
    expect(swing?.second).toBeNull();
    expect(swing?.difference).toBeNull();
  });

  test('says first what was not alike: speed, coolant, rate, length, kind', () => {
    const quick = pairCapture({ ...pair, seed: 1, through: 0.5 }, 40);
    const slow = captureOf([
      { role: 'upstreamO2', bank: 1, rateHz: 5, seconds: 60, values: (t) => (Math.sin(7 * t) > 0 ? 0.8 : 0.1) },
      { role: 'downstreamO2', bank: 1, rateHz: 5, seconds: 60, values: () => 0.6 },
      { role: 'rpm', rateHz: 2, seconds: 60, values: () => 1480 },
      { role: 'coolant', rateHz: 1, seconds: 60, values: () => 62 },
    ]);
    const { unlike, sentence } = compareWindows(
      { capture: quick, window: window(0, 60) },
      { capture: slow, window: window(0, 20, { kind: 'cruise' }) },
    );
    expect(unlike.map(({ id }) => id)).toEqual(['kind', 'rpm', 'coolant', 'rate', 'rearRate', 'length']);
    expect(unlike.find(({ id }) => id === 'rpm')?.words).toBe('engine speed: 2250 against 1480 1/min');
    expect(sentence).toMatch(/^Not alike: /);
  });

  test('what only one of them recorded is not alike either', () => {
    const with_ = pairCapture({ ...pair, seed: 1, through: 0.5 }, 20);
    const without = { ...with_, channels: with_.channels.filter(({ role }) => role !== 'coolant') };
    const { unlike } = compareWindows(
      { capture: with_, window: window(0, 60) },
      { capture: without, window: window(0, 60) },
    );
    expect(unlike).toEqual([{ id: 'coolant', words: 'coolant: recorded in the first only' }]);
  });

  test('a window with itself differs in nothing', () => {
    const capture = pairCapture({ ...pair, seed: 4, through: 0.5 }, 20);
    const side = { capture, window: window(5, 55) };
    const { pairs, unlike } = compareWindows(side, side);
    expect(unlike).toEqual([]);
    for (const { first, second, difference } of pairs) {
      expect(second).toEqual(first);
      expect(difference === null || difference === 0).toBe(true);
    }
  });

  test.each(HOSTILE_CAPTURES)('%s: never throws', (_name, capture) => {
    const { sentence } = compareWindows(
      { capture, window: window(0, 60) },
      { capture, window: window(900, 901, { bank: null }) },
    );
    expect(sentence).toMatch(/\.$/);
    expect(sentence).not.toMatch(/NaN|undefined|null/);
  });
});
