import type { Grams, GramsPerSecond, Seconds, Share } from '../units/quantities.ts';

/** Share of oxygen in dry air by mass: 0.20946 * 31.998 / 28.9647 (check 3.20). */
export const AIR_OXYGEN_MASS_SHARE = 0.2314;

/**
 * Excess oxygen of a gas as a share of its air's oxygen: 1 - 1/lambda. Positive lean, negative rich, 1 for pure air
 * (fuel cut, lambda infinite). Lambda at or below 0 gives NaN.
 */
export function excessOxygen(lambda: number): number {
  return lambda > 0 ? 1 - 1 / lambda : Number.NaN;
}

/**
 * Oxygen carried into a converter beyond what the fuel needs: w (1 - 1/lambda) air dt, g. Negative where oxygen is
 * wanting. One printed form leaves w out: never compare grams across definitions (checks 3.20 to 3.25).
 * @param massShare w; 0.2314 unless a source uses another
 */
export function oxygenMass(
  lambda: number,
  air: GramsPerSecond,
  durationS: Seconds,
  massShare: Share = AIR_OXYGEN_MASS_SHARE,
): Grams {
  return massShare * excessOxygen(lambda) * air * durationS;
}
