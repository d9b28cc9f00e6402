import type { Celsius, Volts } from '../units/quantities.ts';

/** Gas constant, J/(mol K); product of the exact SI values of the Avogadro and Boltzmann constants (CODATA 2018). */
export const GAS_CONSTANT = 8.31446261815324;
/** Faraday constant, C/mol; product of the exact SI values of Avogadro constant and elementary charge (CODATA 2018). */
export const FARADAY_CONSTANT = 96485.33212331;
/** 0 °C in kelvin, exact. */
export const ZERO_CELSIUS_K = 273.15;
/** Share of oxygen in dry air by volume. */
export const AIR_OXYGEN = 0.2095;

/**
 * Voltage of a zirconia cell between two oxygen pressures: E = (R T / 4 F) ln(p_reference / p_exhaust).
 * @param temperatureC of the cell, above -273.15 °C
 * @param referenceAtm oxygen pressure of the reference gas, above 0
 * @param exhaustAtm oxygen pressure at the electrode, above 0; the unit is free but the same for both
 * @returns volts, positive where the exhaust holds less oxygen; 0 exactly for equal pressures
 * Source: Nernst equation, check 4.01; values of check 4.02 to 4.06.
 */
export function nernstVolts(temperatureC: Celsius, referenceAtm: number, exhaustAtm: number): Volts {
  const temperatureK = temperatureC + ZERO_CELSIUS_K;
  return ((GAS_CONSTANT * temperatureK) / (4 * FARADAY_CONSTANT)) * Math.log(referenceAtm / exhaustAtm);
}

/** Oxygen pressure that gives `volts`: the same equation the other way round. */
export function oxygenPressure(temperatureC: Celsius, referenceAtm: number, volts: Volts): number {
  const temperatureK = temperatureC + ZERO_CELSIUS_K;
  return referenceAtm * Math.exp((-4 * FARADAY_CONSTANT * volts) / (GAS_CONSTANT * temperatureK));
}

/**
 * Oxygen pressure left at a catalytic electrode in rich gas, from CO + ½ O2 = CO2 in equilibrium, atm.
 * Free energy of reaction taken as -282990 + 86.8 T J/mol (enthalpy: check 5.01; entropy from memory of the
 * thermochemical tables).
 * @param carbonMonoxide share of CO and H2 together, above 0
 * @param carbonDioxide share of CO2 and H2O together
 */
export function richOxygenPressure(temperatureC: Celsius, carbonMonoxide: number, carbonDioxide: number): number {
  const temperatureK = temperatureC + ZERO_CELSIUS_K;
  const equilibrium = Math.exp((282990 - 86.8 * temperatureK) / (GAS_CONSTANT * temperatureK));
  const root = carbonDioxide / (equilibrium * carbonMonoxide);
  return root * root;
}
