import type { Celsius, KelvinDifference, Share } from '../units/quantities.ts';

const ZERO_C = 273.15;

/**
 * True surface temperature behind an infrared reading, by total radiation:
 * set * Ti^4 + (1 - set) * Ta^4 = e * T^4 + (1 - e) * Ta^4, in kelvin (checks 5.11 to 5.14). `set` is the emissivity the
 * instrument was set to, `surface` that of the steel, both 0.01 to 1. Hand instruments see only 8 to 14 µm, so the
 * fourth power is an approximation (check 5.15). An emissivity of the surface equal to the setting changes nothing.
 */
export function trueTemperature(shown: Celsius, set: Share, surface: Share, ambient: Celsius = 25): Celsius {
  const around = (ambient + ZERO_C) ** 4;
  const seen = set * (shown + ZERO_C) ** 4 + (1 - set) * around;
  const fourth = (seen - (1 - surface) * around) / surface;
  return fourth > 0 ? fourth ** 0.25 - ZERO_C : -ZERO_C;
}

/** Oxidised and rusted exhaust steel: 0.61 to 0.85 (check 5.10). */
const STEEL: readonly [Share, Share] = [0.61, 0.85];

/** Share of the reading in °C by which a hand-held instrument may err, and its least (common practice, no source). */
const READING_SHARE = 0.02;
const LEAST_K: KelvinDifference = 2;

/**
 * Half of the 95 % interval of a surface temperature shown by a hand-held instrument, K: its own error, and for an
 * infrared one what the unknown finish of the steel does to it. Two spots differ in finish by about half of the range
 * that oxidised steel has, since both are of the same pipe. `set` null is a contact probe.
 */
export function halfInterval(shown: Celsius, set: Share | null): KelvinDifference {
  const own = Math.max(LEAST_K, READING_SHARE * Math.abs(shown));
  if (set === null) return own;
  const spread = trueTemperature(shown, set, STEEL[0]) - trueTemperature(shown, set, STEEL[1]);
  return Math.hypot(own, spread / 4);
}
