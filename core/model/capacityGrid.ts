import type { Grams, Seconds } from '../units/quantities.ts';

/** Capacities at which every likelihood is computed: even in the logarithm, from nothing to more than any road car has. */
export const CAPACITY_GRID_G: readonly Grams[] = Array.from({ length: 20 }, (_, i) => 0.006 * 1.42 ** i);

/** Step of that grid in the natural logarithm. */
export const CAPACITY_STEP = Math.log(1.42);

/** Time constants of the rear sensor that are tried; healthy ones lie around 0.2 s. */
export const LAG_GRID_S: readonly Seconds[] = [0.05, 0.09, 0.15, 0.25, 0.4, 0.65, 1.1, 1.9];

/** Delays that are tried, at the window's mean air flow. Negative: channels of one row were not sampled at one moment. */
export const DELAY_STEP_S: Seconds = 0.04;
export const DELAY_GRID_S: readonly Seconds[] = Array.from({ length: 20 }, (_, i) => (i - 3) * DELAY_STEP_S);

/** Entries of a table over all three grids: capacity outermost, delay innermost. */
export const TABLE_LENGTH = CAPACITY_GRID_G.length * LAG_GRID_S.length * DELAY_GRID_S.length;

/** Where a capacity, lag and delay stand in such a table. */
export function tableIndex(capacity: number, lag: number, delay: number): number {
  return (capacity * LAG_GRID_S.length + lag) * DELAY_GRID_S.length + delay;
}
