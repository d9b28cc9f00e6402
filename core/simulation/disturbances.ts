import type { GramsPerSecond, RevolutionsPerMinute, Seconds } from '../units/quantities.ts';
import type { Random } from './random.ts';
import type { LeakParameters, MixtureParameters } from './vehicle.ts';
import { createWander, lagShare } from './wander.ts';

/** How long the air of one misfire is spread by mixing. */
const MIXED_S: Seconds = 0.05;
/** Share of a pulse that is air when it reaches the sensor. */
const PULSE_AIR = 0.9;
/** Taken for every engine: it only decides how often one of them may fail to fire. */
const CYLINDERS = 4;

/** Unburnt oxygen of misfires as the front sensor meets it: pulses of nearly pure air, one cylinder's share, mixed. */
export function createMisfire(
  { misfire }: MixtureParameters,
  random: Random,
  stepS: Seconds,
): (rpm: RevolutionsPerMinute) => number {
  const share = lagShare(MIXED_S, stepS);
  let pulse = 0;
  let leftS = 0;
  return (rpm) => {
    if (misfire === 0) return 0;
    const cyclesAStep = (rpm / 120) * stepS * CYLINDERS;
    if (leftS <= 0 && random.chance(misfire * cyclesAStep)) leftS = 30 / rpm;
    leftS -= stepS;
    pulse += ((leftS > 0 ? PULSE_AIR : 0) - pulse) * share;
    return pulse;
  };
}

/**
 * Excess oxygen from outside air: a share that falls as the flow rises, coming in pulses (common practice, no source).
 * `leakGS` is what enters at an idle of 3 g/s.
 */
export function createLeak(
  { aheadOfFront, aheadOfRear, pulseHz }: LeakParameters,
  random: Random,
  stepS: Seconds,
): (leakGS: GramsPerSecond, air: GramsPerSecond) => number {
  const none = aheadOfFront === 0 && aheadOfRear === 0;
  const pulse = createWander(random, 0.6, 1 / (2 * Math.PI * pulseHz), stepS);
  return (leakGS, air) => {
    if (none || leakGS === 0) return 0;
    return (Math.max(0, 1 + pulse()) * leakGS) / (leakGS + air * (air / 3) ** 0.5);
  };
}
