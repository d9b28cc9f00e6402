import type { Seconds, Share, Volts } from '../units/quantities.ts';
import type { FrontSensor } from './vehicle.ts';
import { lagShare } from './wander.ts';
import { CIRCUIT_BIAS_V, createZirconia } from './zirconia.ts';

/** What a front sensor shows; the one of the two that it does not have stays where it began. */
export interface FrontReading {
  frontV: Volts;
  frontLambda: number;
}

/** Nothing shows a lambda beyond the end of its scale (J1979, check 1.16). */
const LARGEST_LAMBDA = 1.999;
/** Excess oxygen beyond which a wideband sensor no longer follows. */
const LARGEST_EXCESS = 0.6;

/** A reading before anything was seen. */
export const NO_READING: Readonly<FrontReading> = { frontV: CIRCUIT_BIAS_V, frontLambda: 1 };

/** A front sensor as a stepper: takes the gas's excess oxygen and the cell's warmth, writes what it shows. */
export function createFront(
  sensor: FrontSensor,
  stepS: Seconds,
): (shown: FrontReading, x: number, heat: Share) => void {
  if (sensor.kind === 'switching') {
    const cell = createZirconia(sensor.cell, stepS);
    return (shown, x, heat) => {
      shown.frontV = cell(x, heat);
    };
  }
  const share = lagShare(sensor.lagS, stepS);
  let seen = 0;
  return (shown, x) => {
    seen += (Math.min(LARGEST_EXCESS, x) - seen) * share;
    shown.frontLambda = Math.min(LARGEST_LAMBDA, 1 / (1 - seen) + sensor.bias);
  };
}
