import { describe, expect, it } from 'vitest';
import { conversion, convert } from '../../../../core/units/convert.ts';

describe('conversion', () => {
  it('changes no bit between two spellings of one unit', () => {
    for (const value of [0.1, 1 / 3, -0, 1e-300]) expect(Object.is(convert(value, 'V', 'Volts'), value)).toBe(true);
  });

  it('gives millivolts as the nearest number to the decimal volts', () => {
    for (let mV = 0; mV <= 1275; mV++) expect(convert(mV, 'mV', 'V')).toBe(Number(`${mV}e-3`));
  });

  it('is null between different quantities and for unknown units', () => {
    expect(conversion('V', '°C')).toBeNull();
    expect(conversion('V', 'furlong')).toBeNull();
    expect(conversion('', 'V')).toBeNull();
  });

  it('keeps a missing value missing', () => {
    expect(convert(Number.NaN, '°F', '°C')).toBeNaN();
  });

  it('turns the fuel-air equivalence ratio round, and gives no infinity for none', () => {
    expect(convert(1.25, 'φ', 'λ')).toBe(0.8);
    expect(convert(0.8, 'λ', 'phi')).toBe(1.25);
    expect(convert(0, 'φ', 'λ')).toBeNaN();
  });
});
