import { AIR_OXYGEN_MASS_SHARE } from '../model/oxygenFlow.ts';
import type { Celsius, Grams, GramsPerSecond, Seconds, Share } from '../units/quantities.ts';

/** A converter as the gas meets it: cells in a row, each with its part of the oxygen storage. */
export interface ConverterParameters {
  /** Oxygen that the hot converter can hold between empty and full, ahead of the rear sensor, g. */
  readonly capacityG: Grams;
  /** How quickly lean gas fills and rich gas empties a cell: transfer units per gram of storage and g/s of air. */
  readonly storeRate: number;
  readonly releaseRate: number;
  /** Temperature at which half of it works (light-off, check 3.30), and how gradual that is. */
  readonly lightOffC: Celsius;
  readonly lightOffWidthK: number;
  /** Excess oxygen in the outlet gas between an empty and a full last cell: what a healthy rear sensor wanders on. */
  readonly equilibriumSpan: number;
}

export interface Converter {
  /** Advances one step; returns the excess oxygen behind the brick ahead of the rear sensor. */
  step(x: number, air: GramsPerSecond, temperatureC: Celsius): number;
  /** Stored oxygen over what it can hold, ahead of the rear sensor. */
  filled(): Share;
}

/** Cells ahead of the rear sensor. More cells make the breakthrough sharper; six is gradual as real bricks are. */
export const CELLS = 6;

/** Share of the storage that works at a temperature: a logistic light-off curve, then a slow rise to 600 °C. */
export function lightOff(parameters: ConverterParameters, temperatureC: Celsius): Share {
  const lit = 1 / (1 + Math.exp(-(temperatureC - parameters.lightOffC) / parameters.lightOffWidthK));
  return lit * (0.6 + 0.4 * Math.min(1, Math.max(0, (temperatureC - 350) / 250)));
}

/** Fill of the ceramic as the outlet gas feels it: the later the cell, the more. */
function outletFill(fill: Float64Array): Share {
  let sum = 0;
  let weights = 0;
  for (let i = 0; i < fill.length; i++) {
    sum += (fill[i] ?? 0) * (i + 1);
    weights += i + 1;
  }
  return sum / weights;
}

/**
 * Oxygen storage as cells in series. Each step, lean gas loses the share 1 - exp(-n (1 - fill)) of its excess oxygen
 * to a cell and rich gas takes the share 1 - exp(-n fill) of its want from it, with n the cell's transfer units
 * rate * capacity / air flow: storage fills, empties and lets through gradually, more so at high flow and low
 * capacity. Mass balance: w (1 - 1/lambda) * air flow (check 3.20). The store makes it more than a filter, as SAE
 * 820276 asks (check 3.38).
 * @param startFill 0 empty to 1 full
 */
export function createConverter(parameters: ConverterParameters, stepS: Seconds, startFill: Share): Converter {
  const fill = new Float64Array(CELLS).fill(startFill);
  const cellG = parameters.capacityG / CELLS;
  return {
    step(x, air, temperatureC) {
      const works = lightOff(parameters, temperatureC);
      const hold = Math.max(1e-6, cellG * works);
      const units = hold / Math.max(0.3, air);
      const massPerX = AIR_OXYGEN_MASS_SHARE * air * stepS;
      let left = x;
      for (let i = 0; i < CELLS; i++) left = cellStep(fill, i, left, units, massPerX / hold, parameters);
      const grip = 1 - Math.exp(-2 * units * parameters.releaseRate);
      return left + parameters.equilibriumSpan * grip * (outletFill(fill) - 0.5);
    },
    filled() {
      let sum = 0;
      for (let i = 0; i < CELLS; i++) sum += fill[i] ?? 0;
      return sum / CELLS;
    },
  };
}

/** One cell for one step: changes its fill in place, returns the excess oxygen that goes on. */
function cellStep(
  fill: Float64Array,
  index: number,
  x: number,
  units: number,
  fillPerX: number,
  { storeRate, releaseRate }: ConverterParameters,
): number {
  const now = fill[index] ?? 0;
  const share = x >= 0 ? 1 - Math.exp(-units * storeRate * (1 - now)) : 1 - Math.exp(-units * releaseRate * now);
  const wanted = x * share;
  const next = Math.min(1, Math.max(0, now + wanted * fillPerX));
  fill[index] = next;
  // What the limits 0 and 1 refused goes on with the gas.
  return fillPerX > 0 ? x - (next - now) / fillPerX : x;
}
