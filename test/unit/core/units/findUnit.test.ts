import { describe, expect, it } from 'vitest';
import { findUnit, sameUnit } from '../../../../core/units/findUnit.ts';

describe('finding a unit by what a stranger typed', () => {
  it.each([
    ['RPM', '1/min'],
    ['[rpm]', '1/min'],
    ['U/min', '1/min'],
    ['tr/min', '1/min'],
    ['Deg. C', '°C'],
    ['(°F)', '°F'],
    ['ºC', '°C'],
    ['Â°C', '°C'],
    ['\uFFFDC', '°C'],
    ['oF', '°F'],
    ['øC', '°C'],
    ['*F', '°F'],
    ["'C", '°C'],
    ['Ã‚°F', '°F'],
    ['┬░C', '°C'],
    ['degree_Celsius', '°C'],
    ['revolutions_per_minute', '1/min'],
    ['Meters/second', 'm/s'],
    ['rad/s', 'rad/s'],
    ['km / h', 'km/h'],
    ['KPH', 'km/h'],
    ['g/sec', 'g/s'],
    ['Lb/Min', 'lb/min'],
    ['in. Hg', 'inHg'],
    ['Volts', 'V'],
    ['mV', 'mV'],
    ['Prozent', '%'],
    ['μs', 'µs'],
    ['us', 'µs'],
    ['A/F', 'AFR'],
    ['lambda', 'λ'],
  ])('%s is %s', (typed, symbol) => {
    expect(findUnit(typed)?.symbol).toBe(symbol);
  });

  it('tells milli from mega by the case of the letter', () => {
    expect(findUnit('MHz')?.symbol).toBe('MHz');
    expect(findUnit('ms')?.symbol).toBe('ms');
    expect(findUnit('MPa')?.symbol).toBe('MPa');
  });

  it.each(['', '()', 'of', 'OK', 'Bank 1', 'Sensor 2', 'furlong', 'x'.repeat(60)])('%s is no unit', (typed) => {
    expect(findUnit(typed)).toBeNull();
  });

  it('sees that two spellings mean one unit, and that two unknown ones do not', () => {
    expect(sameUnit('rpm', 'U/min')).toBe(true);
    expect(sameUnit('V', 'mV')).toBe(false);
    expect(sameUnit('foo', 'foo')).toBe(false);
  });
});
