import type { Grams, Seconds } from '../units/quantities.ts';

/** Capacities at which every likelihood is computed: even in the logarithm, from nothing to more than any road car has. */
export const CAPACITY_GRID_G: readonly Grams[] = Array.from({ length: 20 }, (_, i) => 0.006 * 1.42 ** i);

/** Step of that grid in the natural logarithm. */
export const CAPACITY_STEP = Math.log(1.42);

/**
 * How briskly a converter trades oxygen with the gas, in transfer units for each gram of storage and g/s of air: two
 * kinds, sluggish and brisk, each as likely beforehand (common practice puts the middle near 150, no source; a factor of
 * 1.75 either way stands for one deviation). A sluggish converter lets through what a brisk one of less storage would.
 */
export const RATE_GRID: readonly number[] = [85, 265];

/** Time constants of the rear sensor that are tried; healthy ones lie around 0.2 s. */
export const LAG_GRID_S: readonly Seconds[] = [0.05, 0.09, 0.15, 0.25, 0.4, 0.65, 1.1, 1.9];

/** Delays that are tried, at the window's mean air flow. Negative: channels of one row were not sampled at one moment. */
export const DELAY_STEP_S: Seconds = 0.04;
export const DELAY_GRID_S: readonly Seconds[] = Array.from({ length: 20 }, (_, i) => (i - 3) * DELAY_STEP_S);

/** Converters that are tried, in the order of the tables. */
export const CONVERTERS: readonly { readonly rate: number; readonly capacityG: Grams }[] = RATE_GRID.flatMap((rate) =>
  CAPACITY_GRID_G.map((capacityG) => ({ rate, capacityG })),
);

/** Entries of a table over all four grids: rate outermost, then capacity, lag, and delay innermost. */
export const TABLE_LENGTH = CONVERTERS.length * LAG_GRID_S.length * DELAY_GRID_S.length;

/** Where a rate, capacity, lag and delay stand in such a table. */
export function tableIndex(rate: number, capacity: number, lag: number, delay: number): number {
  const at = rate * CAPACITY_GRID_G.length + capacity;
  return (at * LAG_GRID_S.length + lag) * DELAY_GRID_S.length + delay;
}

/** What a fit knows beside the capacity: how briskly oxygen is traded, lag of the rear sensor, delay of the gas. */
export interface Passage {
  readonly rate: number;
  readonly lagS: Seconds;
  readonly delayS: Seconds;
}
