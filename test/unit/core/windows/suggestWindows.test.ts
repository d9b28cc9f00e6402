import { describe, expect, test } from 'vitest';
import { kindOf, withKind } from '../../../../core/windows/kindOf.ts';
import { suggestWindows } from '../../../../core/windows/suggestWindows.ts';
import { captureOf, type DrawnChannel } from '../../../support/drawTrace.ts';
import { HOSTILE_CAPTURES } from '../../../support/hostileCaptures.ts';

/** Engine speed drawn as pieces: [until second, 1/min], straight between them where a piece says 'to'. */
function engine(
  pieces: readonly (readonly [number, number])[],
  speed: (t: number) => number = () => 0,
): DrawnChannel[] {
  const seconds = pieces[pieces.length - 1]?.[0] ?? 0;
  const rpm = (t: number) => pieces.find(([until]) => t < until)?.[1] ?? 800;
  return [
    { role: 'rpm', rateHz: 10, seconds, values: rpm },
    { role: 'speed', rateHz: 2, seconds, values: speed },
  ];
}

const BAY = engine([
  [30, 800],
  [100, 2300],
  [130, 800],
]);

describe('suggestWindows', () => {
  test('finds the idle, the hold without its settling, and the idle after it, in order', () => {
    const found = suggestWindows(captureOf(BAY));
    expect(found.map(({ kind }) => kind)).toEqual(['idle', 'hold', 'idle']);
    const hold = found[1];
    expect(hold?.startS).toBeCloseTo(42, 0);
    expect(hold?.endS).toBeCloseTo(100, 0);
    expect(found.every(({ origin }) => origin === 'suggested')).toBe(true);
  });

  test('calls the same speed a cruise when the vehicle moves', () => {
    const found = suggestWindows(captureOf(engine([[120, 2100]], () => 80)));
    expect(found.map(({ kind }) => kind)).toEqual(['cruise']);
  });

  test('cuts a long cruise into pieces of at most two minutes and offers a few, the longest', () => {
    const found = suggestWindows(captureOf(engine([[3000, 2100]], () => 90)));
    expect(found).toHaveLength(6);
    for (const { startS, endS } of found) expect(endS - startS).toBeLessThanOrEqual(120.01);
  });

  test('finds a snap where the speed jumps up and comes back, and none where it stays up', () => {
    const snap = engine([
      [20, 800],
      [21.5, 3200],
      [40, 800],
    ]);
    expect(suggestWindows(captureOf(snap)).filter(({ kind }) => kind === 'snap')).toHaveLength(1);
    const stays = engine([
      [20, 800],
      [60, 3000],
    ]);
    expect(suggestWindows(captureOf(stays)).filter(({ kind }) => kind === 'snap')).toHaveLength(0);
  });

  test('finds a fuel cut where the engine coasts and the front sensor reads air, and none where it does not', () => {
    const coast = (air: number): DrawnChannel[] => [
      { role: 'rpm', rateHz: 10, seconds: 40, values: (t) => (t < 15 ? 2400 : Math.max(800, 2400 - 200 * (t - 15))) },
      { role: 'upstreamO2', bank: 1, rateHz: 10, seconds: 40, values: (t) => (t > 15.3 && t < 22 ? air : 0.6) },
    ];
    const cuts = (air: number) => suggestWindows(captureOf(coast(air))).filter(({ kind }) => kind === 'fuelCut');
    expect(cuts(0.05)).toHaveLength(1);
    expect(cuts(0.6)).toHaveLength(0);
  });

  test('names the bank where there is one, and none where there are two', () => {
    const sensor = (bank: 1 | 2): DrawnChannel => ({
      role: 'downstreamO2',
      bank,
      rateHz: 2,
      seconds: 130,
      values: () => 0.6,
    });
    expect(suggestWindows(captureOf([...BAY, sensor(2)])).map(({ bank }) => bank)).toEqual([2, 2, 2]);
    expect(suggestWindows(captureOf([...BAY, sensor(1), sensor(2)])).map(({ bank }) => bank)).toEqual([
      null,
      null,
      null,
    ]);
  });

  test('offers even pieces of a capture without engine speed', () => {
    const blind = captureOf([{ role: 'downstreamO2', bank: 1, rateHz: 1, seconds: 300, values: () => 0.6 }]);
    expect(suggestWindows(blind).map(({ kind, startS, endS }) => [kind, startS, endS])).toEqual([
      ['mixed', 0, 100],
      ['mixed', 100, 200],
      ['mixed', 200, 300],
    ]);
  });

  test('leaves the open loop out of a steady stretch where its status was recorded', () => {
    const status: DrawnChannel = {
      role: 'fuelStatus',
      bank: 1,
      rateHz: 2,
      seconds: 130,
      values: (t) => (t < 60 ? 4 : 2),
    };
    const hold = suggestWindows(captureOf([...BAY, status])).find(({ kind }) => kind === 'hold');
    expect(hold?.startS).toBeGreaterThanOrEqual(60);
  });

  test.each(HOSTILE_CAPTURES)(
    '%s: windows lie inside the capture, start before they end, and never throw',
    (_name, capture) => {
      for (const { startS, endS } of suggestWindows(capture)) {
        expect(startS).toBeLessThan(endS);
        expect(startS).toBeGreaterThanOrEqual(0);
        expect(endS).toBeLessThanOrEqual(capture.durationS + 1e-9);
      }
    },
  );
});

describe('kindOf', () => {
  const capture = captureOf(BAY);

  test.each([
    [40, 90, 'hold'],
    [2, 28, 'idle'],
    [15, 50, 'mixed'],
    [500, 600, 'mixed'],
  ] as const)('%i to %i s is %s', (startS, endS, kind) => {
    expect(kindOf(capture, { startS, endS })).toBe(kind);
  });

  test('is given to a stretch marked by hand, and taken from nobody who said one', () => {
    const marked = { startS: 40, endS: 90, bank: 1, kind: 'mixed', origin: 'byHand' } as const;
    expect(withKind(capture, marked).kind).toBe('hold');
    for (const said of [
      { ...marked, kind: 'cruise' },
      { ...marked, origin: 'accepted' },
    ] as const)
      expect(withKind(capture, said)).toBe(said);
  });
});
