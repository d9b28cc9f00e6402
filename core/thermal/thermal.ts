import type { Bank } from '../capture/roles.ts';
import type { Celsius, KelvinDifference, RevolutionsPerMinute, Share } from '../units/quantities.ts';

/** Surface temperatures at a converter's inlet and outlet, taken by hand. Already in °C. */
export interface ThermalPair {
  readonly inletC: Celsius;
  readonly outletC: Celsius;
  readonly bank: Bank;
  /** Which brick along the exhaust, from 1; null where nobody said. */
  readonly brick: number | null;
  readonly rpm: RevolutionsPerMinute | null;
  /** Emissivity the instrument was set to, or null for a contact probe or where nobody said. */
  readonly emissivity: Share | null;
}

/** What a thermal pair says, and how much weight it can bear. */
export interface ThermalReading extends ThermalPair {
  readonly riseC: KelvinDifference;
  /** 95 % interval of the rise from instrument and emissivity, K. */
  readonly riseInterval: readonly [KelvinDifference, KelvinDifference];
  /** A sentence that reads it. */
  readonly reading: string;
  /** Evidence for notStoring as a logarithm of odds: positive speaks for it; small by construction. */
  readonly weight: number;
}
