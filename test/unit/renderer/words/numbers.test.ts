import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bytesWords,
  countWords,
  differenceWords,
  keptTogether,
  measuredWords,
  numberWords,
  typedNumber,
  withUnit,
} from '../../../../renderer/words/numbers.ts';

const NBSP = '\u00a0';

describe('numbers as people read them', () => {
  it.each([
    [88, '°C', 0, `88${NBSP}°C`],
    [0.45, 'V', 2, `0.45${NBSP}V`],
    [0.57, '1', 2, '0.57'],
    [-3.14, '%', 1, `−3.1${NBSP}%`],
  ])('%d %s', (value, unit, digits, words) => {
    expect(withUnit(value, unit, digits)).toBe(words);
  });

  it('has no minus before zero', () => {
    expect(numberWords(-0.001, 2)).toBe('0.00');
    expect(differenceWords(0.0001, 2)).toBe('0.00');
  });

  it('says a difference with its sign', () => {
    expect(differenceWords(0.4, 2)).toBe('+0.40');
    expect(differenceWords(-0.4, 2)).toBe('−0.40');
  });

  it('counts in words that fit', () => {
    expect(countWords(1, 'window')).toBe(`1${NBSP}window`);
    expect(countWords(2, 'window')).toBe(`2${NBSP}windows`);
  });

  it.each([
    [999, `999${NBSP}B`],
    [228_000, `228${NBSP}kB`],
    [1_400_000, `1.4${NBSP}MB`],
    [2_310_000_000, `2.31${NBSP}GB`],
  ])('%d bytes', (bytes, words) => {
    expect(bytesWords(bytes)).toBe(words);
  });

  it('gives value and interval with the same digits, no more than the interval deserves', () => {
    expect(measuredWords(0.5678, [0.41, 0.72], 3)).toEqual({ value: '0.57', interval: '0.41 to 0.72' });
    expect(measuredWords(2247.3, [2230, 2262], 1)).toEqual({ value: '2247', interval: '2230 to 2262' });
  });
});

describe('a sentence of the core', () => {
  it('keeps each number on the line of its unit (NIST SP 811, 7.2: a space, which is no place to part them)', () => {
    expect(keptTogether('Coolant 16 to 50 °C at 2500 1/min; 0.34 g (95 %).')).toBe(
      'Coolant 16 to 50\u00a0°C at 2500\u00a01/min; 0.34\u00a0g (95\u00a0%).',
    );
  });

  it('leaves other words behind a number alone', () => {
    const sentence = 'It ran 31 times worse, 3 storing and 2 said so; 12 V8 engines.';
    expect(keptTogether(sentence)).toBe(sentence);
  });
});

describe('a typed number', () => {
  it.each([
    ['0,45', 0.45],
    ['0.45', 0.45],
    [' 500 ', 500],
    ['−12.5', -12.5],
    ['.5', 0.5],
    ['7.', 7],
  ])('%s is %d', (typed, value) => {
    expect(typedNumber(typed)).toBe(value);
  });

  it.each(['', 'abc', '1.2.3', '1e3', '12 V', '1,234.5', '--1', 'NaN', 'Infinity'])('%j is none', (typed) => {
    expect(typedNumber(typed)).toBeNull();
  });

  it('is read back from what the program writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 0, max: 3 }), (whole, digits) => {
        const value = whole / 10 ** digits;
        expect(typedNumber(numberWords(value, digits))).toBeCloseTo(value, digits + 6);
      }),
    );
  });
});
