import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  digitsFor,
  digitsOf,
  numberCell,
  probabilityWords,
  showNumber,
} from '../../../../../core/evidence/words/numbers.ts';
import {
  differenceIn,
  durationWords,
  instantWords,
  temperatureIn,
  typedTemperature,
} from '../../../../../core/evidence/words/quantities.ts';
import { showControls, showControlsOnOneLine } from '../../../../../core/evidence/words/showControls.ts';
import { celsius } from '../../../../../core/thermal/pairOf.ts';

describe('E13: numbers by the reader’s country', () => {
  test.each([
    [0.45, 2, '.', '0.45'],
    [0.45, 2, ',', '0,45'],
    [-3.06, 1, '.', '−3.1'],
    [-0.04, 1, '.', '0.0'],
    [1234, 0, '.', '1234'],
    [12345, 0, '.', '12\u00a0345'],
    [1234567.5, 1, ',', '1\u00a0234\u00a0567,5'],
  ] as const)('%d with %d digits and "%s" is %s', (value, digits, sign, shown) => {
    expect(showNumber(value, digits, sign)).toBe(shown);
  });

  test('a value that is not finite is a mistake of the caller', () => {
    expect(() => showNumber(Number.NaN, 1, '.')).toThrow(RangeError);
  });
});

describe('E12: digits follow the uncertainty', () => {
  test.each([
    [0.03, 3, 2],
    [0.012, 3, 3],
    [0.0003, 3, 3],
    [0.3, 3, 1],
    [0.14, 3, 2],
    [3, 3, 0],
    [1.4, 3, 1],
    [40, 3, 0],
    [0, 3, 3],
  ])('half a width of %d gives, of at most %d, %d digits', (half, most, digits) => {
    expect(digitsFor(half, most)).toBe(digits);
  });

  test('what rounding takes away is never more than half of the uncertainty, and no digit stands for nothing', () => {
    const half = fc.double({ min: 1e-6, max: 1e4, noNaN: true });
    const value = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(half, value, (width, of) => {
        const digits = digitsFor(width, 12);
        expect(Math.abs(Number(of.toFixed(digits)) - of)).toBeLessThanOrEqual(width / 2 + 1e-9);
        if (digits > 0) expect(10 ** -digits).toBeGreaterThan(width / 20);
      }),
      { numRuns: 1000 },
    );
  });

  test('typed and marked numbers keep the digits they came with', () => {
    expect([digitsOf(61.2, 3), digitsOf(61.25, 3), digitsOf(60, 3), digitsOf(1 / 3, 3)]).toEqual([1, 2, 0, 3]);
  });

  test('a cell is never more exact than what it shows', () => {
    expect(numberCell(0.66000001, 2, 'V', '.')).toEqual({ kind: 'number', value: 0.66, shown: '0.66', unit: 'V' });
    expect(numberCell(1, 0, '1', '.')).toMatchObject({ unit: null });
  });

  test('a probability is never certain', () => {
    expect([0, 0.004, 0.5, 0.973, 0.996, 1].map(probabilityWords)).toEqual([
      'under 1\u00a0%',
      'under 1\u00a0%',
      '50\u00a0%',
      '97\u00a0%',
      'over 99\u00a0%',
      'over 99\u00a0%',
    ]);
  });
});

describe('E16: temperatures', () => {
  test('32 °F, 0 °C and 273.15 K are the same, exactly; a difference has no offset (NIST SP 811, appendix B)', () => {
    expect(celsius({ value: 32, unit: 'F' })).toBe(0);
    expect(celsius({ value: 273.15, unit: 'K' })).toBe(0);
    expect(temperatureIn(0, 'F')).toBe(32);
    expect(temperatureIn(0, 'K')).toBe(273.15);
    expect(differenceIn(10, 'F')).toBe(18);
    expect(differenceIn(10, 'K')).toBe(10);
  });

  test('check 5.06: 290 °F and 385 °F are 143.333 °C and 196.111 °C, a rise of 52.778 K', () => {
    const inlet = celsius({ value: 290, unit: 'F' });
    const outlet = celsius({ value: 385, unit: 'F' });
    expect(inlet).toBeCloseTo(143.333, 3);
    expect(outlet).toBeCloseTo(196.111, 3);
    expect(outlet - inlet).toBeCloseTo(52.778, 3);
  });

  test('a typed temperature keeps its unit and its digits', () => {
    expect(typedTemperature({ value: 290, unit: 'F' }, '.')).toBe('290\u00a0°F');
    expect(typedTemperature({ value: 143.25, unit: 'C' }, ',')).toBe('143,3\u00a0°C');
  });
});

describe('times', () => {
  test('instants are ISO 8601, to the minute, with their offset', () => {
    expect(instantWords('2026-11-24T08:05:00+01:00')).toBe('2026-11-24 08:05 +01:00');
    expect(instantWords('2026-11-24T08:05:59.123Z')).toBe('2026-11-24 08:05 UTC');
    expect(instantWords('2026-11-24T08:05')).toBe('2026-11-24 08:05');
    expect(instantWords('some day')).toBe('some day');
  });

  test('durations', () => {
    expect([59.94, 412.8, 3599.6, 9000].map((s) => durationWords(s, '.'))).toEqual([
      '59.9\u00a0s',
      '6\u00a0min 53\u00a0s',
      '1\u00a0h 0\u00a0min',
      '2\u00a0h 30\u00a0min',
    ]);
  });
});

describe('T-INJ-6: what is not seen is written out', () => {
  test.each([
    ['a\u202eb', 'a‹U+202E›b'],
    ['\u2066x\u2069', '‹U+2066›x‹U+2069›'],
    ['zero\u200bwidth\u200djoin', 'zero‹U+200B›width‹U+200D›join'],
    ['\u001b[31m', '‹U+001B›[31m'],
    ['\u0000', '‹U+0000›'],
    ['\u{e0041}', '‹U+E0041›'],
    ['\ud800', '‹U+D800›'],
    ['\u2028', '‹U+2028›'],
    ['a\r\nb\nc\td', 'a\nb\nc\td'],
    ['plain: äöü é 日本 😀', 'plain: äöü é 日本 😀'],
  ])('%j', (text, shown) => {
    expect(showControls(text)).toBe(shown);
  });

  test('on one line nothing breaks it', () => {
    expect(showControlsOnOneLine('a\r\nb\tc')).toBe('a‹U+000D›‹U+000A›b‹U+0009›c');
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(showControlsOnOneLine(text)).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
      }),
      { numRuns: 2000 },
    );
  });
});
