// Conversion factors of NIST Special Publication 811 (2008 edition), appendix B.8, as printed there; temperatures by its
// section B.1. Read off the table by hand. The last digit of the printed factor is the tolerance.

import { describe, expect, it } from 'vitest';
import { convert } from '../../core/units/convert.ts';

/** One of the first unit is this many of the second. */
const FACTORS: readonly (readonly [from: string, to: string, factor: number, lastDigit: number])[] = [
  ['mph', 'km/h', 1.609344, 0],
  ['kn', 'm/s', 0.5144444, 1e-7],
  ['lb', 'kg', 0.4535924, 1e-7],
  ['lbf', 'N', 4.448222, 1e-6],
  ['mi', 'm', 1609.344, 0],
  ['ft', 'm', 0.3048, 0],
  ['lb/min', 'g/s', 7.559873, 1e-6],
  ['lb/h', 'g/s', 0.1259979, 1e-7],
  ['psi', 'kPa', 6.894757, 1e-6],
  ['bar', 'kPa', 100, 0],
  ['mbar', 'Pa', 100, 1e-12],
  ['inHg', 'kPa', 3.386389, 1e-6],
  ['mmHg', 'kPa', 0.1333224, 1e-7],
  ['inH2O', 'Pa', 249.0889, 1e-4],
  ['hp', 'W', 745.6999, 1e-4],
  ['lbf·ft', 'N·m', 1.355818, 1e-6],
  ['gal/h', 'L/h', 3.785412, 1e-6],
  ['kg/h', 'g/s', 0.2777778, 1e-7],
  ['L/min', 'L/h', 60, 0],
  ['1/min', 'rad/s', 0.1047198, 1e-7],
  ['min', 's', 60, 0],
  ['h', 's', 3600, 0],
  ['d', 's', 86400, 0],
];

/** Fixed points: SP 811 B.1, t/°C = (t/°F − 32)/1.8, T/K = t/°C + 273.15. */
const TEMPERATURES: readonly (readonly [from: string, value: number, celsius: number])[] = [
  ['°F', 32, 0],
  ['°F', 212, 100],
  ['°F', -40, -40],
  ['°F', 290, 143.333333333],
  ['°F', 385, 196.111111111],
  ['K', 273.15, 0],
  ['K', 0, -273.15],
];

describe('units against NIST SP 811', () => {
  it.each(FACTORS)('one %s in %s is %f', (from, to, factor, lastDigit) => {
    expect(Math.abs((convert(1, from, to) ?? Number.NaN) - factor)).toBeLessThanOrEqual(lastDigit);
  });

  it.each(TEMPERATURES)('%s: %f is %f °C', (from, value, celsius) => {
    expect(convert(value, from, '°C')).toBeCloseTo(celsius, 9);
  });
});
