import type { KelvinDifference, Share } from '../units/quantities.ts';

/** Heat of combustion with water as vapour, J/mol (NIST Chemistry WebBook, from memory; checks 5.01 and 5.03). */
const HEAT = { carbonMonoxide: 282.99e3, propane: 2043.1e3, hexane: 3886.8e3, hydrogen: 241.83e3 } as const;
export type Fuel = keyof typeof HEAT;

/** Molar heat capacity of exhaust at 700 K, J/(mol K): 73.5 % N2, 13.5 % CO2, 13 % H2O (check 5.02). */
export const EXHAUST_HEAT_CAPACITY = 34.18;

/**
 * Rise of the gas when a share of it (mole fraction) is oxidised without losses: heat * share / cp. 1 % of carbon
 * monoxide gives 82.8 K at 700 K (check 5.02). Fuel that a garage analyser shows as "ppm HC" is mostly counted as hexane.
 */
export function oxidationRise(fuel: Fuel, share: Share, heatCapacity = EXHAUST_HEAT_CAPACITY): KelvinDifference {
  return (HEAT[fuel] * share) / heatCapacity;
}

/** What a clean, warm engine leaves to burn: 0.1 % CO and 100 ppm hexane, some 20 K before losses (check 5.04). */
export const CLEAN_RISE_K: KelvinDifference = oxidationRise('carbonMonoxide', 0.001) + oxidationRise('hexane', 0.0001);
