import type { Reading, Temperature } from '../record/schema.ts';
import type { Celsius } from '../units/quantities.ts';
import type { ThermalPair } from './thermal.ts';

/** A temperature in °C: °F by (F - 32) / 1.8 (check 5.06). */
export function celsius({ value, unit }: Temperature): Celsius {
  if (unit === 'F') return (value - 32) / 1.8;
  return unit === 'K' ? value - 273.15 : value;
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
