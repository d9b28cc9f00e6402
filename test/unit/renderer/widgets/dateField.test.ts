import { describe, expect, it } from 'vitest';
import { whatIsWrong } from '../../../../renderer/widgets/DateField.tsx';

describe('what is wrong with a typed day', () => {
  it.each(['', '2019-05-01', '1900-01-01'])('%j is right', (day) => {
    expect(whatIsWrong(day)).toBeNull();
  });

  // A field of days has these values in turn while 2019 is typed digit by digit (common practice, no source).
  it.each(['0002-05-01', '0020-05-01', '0201-05-01'])('%j is a year half typed', (day) => {
    expect(whatIsWrong(day)).toBe('Type the year with four digits.');
  });
});
