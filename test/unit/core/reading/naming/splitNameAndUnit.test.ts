import { describe, expect, it } from 'vitest';
import { shortUnitAtEnd, splitNameAndUnit } from '../../../../../core/reading/naming/splitNameAndUnit.ts';

describe('parting a heading into name and unit', () => {
  it.each([
    ['Time (sec)', 'Time', 'sec'],
    ['Engine RPM [RPM]', 'Engine RPM', 'RPM'],
    ['ENGINE_RPM ()', 'ENGINE_RPM', null],
    ['O2 Voltage (Bank 1, Sensor 1) [V]', 'O2 Voltage (Bank 1, Sensor 1)', 'V'],
    ['O2 Voltage (Bank 1, Sensor 1)', 'O2 Voltage (Bank 1, Sensor 1)', null],
    ['Coolant temp(°C)', 'Coolant temp', '°C'],
    ['Lambdasonde Bank 1 Sonde 2 (V)', 'Lambdasonde Bank 1 Sonde 2', 'V'],
    ['Speed, km/h', 'Speed', 'km/h'],
    ['Speed km/h', 'Speed', 'km/h'],
    ['maf_g/s', 'maf', 'g/s'],
    ['Coolant in °F', 'Coolant', '°F'],
    ['Coolant (°C) raw', 'Coolant raw', '°C'],
    ['U_lambda1/V', 'U_lambda1', 'V'],
    ['T_coolant/K', 'T_coolant', 'K'],
    ['m_air/kg/h', 'm_air', 'kg/h'],
    ['A/F', 'A/F', null],
    ['m/s', 'm/s', null],
    ['Frames/s', 'Frames/s', null],
    ['Bank 1', 'Bank 1', null],
    ['Throttle position B', 'Throttle position B', null],
    ['Engine revolutions per minute', 'Engine revolutions per minute', null],
    ['', '', null],
    ['V', 'V', null],
  ])('%s', (heading, name, unit) => {
    expect(splitNameAndUnit(heading)).toEqual({ name, unit });
  });

  it.each([
    ['Coolant temp C', 'Coolant temp', 'C'],
    ['o2_v', 'o2', 'v'],
    ['Lambda', null, null],
  ])('a bare letter at the end of %s', (name, rest, unit) => {
    expect(shortUnitAtEnd(name)).toEqual(unit === null ? null : { name: rest, unit });
  });
});
