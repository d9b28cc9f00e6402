import { describe, expect, it } from 'vitest';
import { whatIsWrong } from '../../../../renderer/widgets/NumberField.tsx';

describe('what is wrong with a typed number', () => {
  it.each([
    ['', {}],
    ['12', {}],
    ['0,95', { min: 0.01, max: 1 }],
    ['3', { whole: true }],
    [' −3 ', { whole: true }],
    ['0,450', {}],
    ['61.125', {}],
    ['1234,500', {}],
    ['1.25', { min: 0, money: true }],
    ['1250.50', { min: 0, money: true }],
    ['1,998', { min: 0.05, max: 30 }], // litres: nobody means 1998 of them
  ])('%j is right', (typed, limits) => {
    expect(whatIsWrong(typed, limits)).toBeNull();
  });

  it.each([
    ['abc', {}, 'This is not a number. Type digits with a point or a comma.'],
    ['2', { max: 1 }, 'Type 1 or less.'],
    ['-1', { min: 0 }, 'Type 0 or more.'],
    ['1.5', { whole: true }, 'Type a whole number, without a point or a comma.'],
    ['128.000', { whole: true }, 'Type a whole number, without a point or a comma.'],
    ['1.250', { min: 0, money: true }, 'This can be read in two ways. Type 1250 or 1.25.'],
    ['2,000', { min: 0, money: true }, 'This can be read in two ways. Type 2000 or 2.'],
    ['128,400', {}, 'This can be read in two ways. Type 128400 or 128.400.'],
  ])('%j is told in a sentence that says what to type', (typed, limits, words) => {
    expect(whatIsWrong(typed, limits)).toBe(words);
  });
});
