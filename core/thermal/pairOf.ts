import type { Reading, Temperature } from '../record/schema.ts';
import { convert } from '../units/convert.ts';
import type { Celsius } from '../units/quantities.ts';
import type { ThermalPair } from './thermal.ts';

/** A temperature in °C (check 5.06). */
export function celsius({ value, unit }: Temperature): Celsius {
  return convert(value, unit, '°C') ?? Number.NaN;
}

/** A kept reading as the core reads it. */
export function pairOf(reading: Reading): ThermalPair {
  return {
    inletC: celsius(reading.inlet),
    outletC: celsius(reading.outlet),
    bank: reading.bank,
    brick: reading.brick,
    rpm: reading.rpm,
    emissivity: reading.emissivity,
  };
}
