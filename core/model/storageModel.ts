import type { Grams, Seconds } from '../units/quantities.ts';
import { LEAN_FOLD_V, RICH_FOLD_V } from './frontOxygen.ts';
import { AIR_OXYGEN_MASS_SHARE } from './oxygenFlow.ts';

/** What goes into the converter and, for steering, what was seen behind it; all at the same even steps. */
export interface ModelInput {
  readonly stepS: Seconds;
  /** Excess oxygen ahead of the converter. NaN where the front sensor was silent: nothing flows in the model then. */
  readonly x: Float64Array;
  readonly airGS: Float64Array;
  /** Recorded rear voltage, NaN where there is none. */
  readonly rearV: Float64Array;
}

/** Static curve of the rear sensor: a logistic step between two branches that go on after Nernst. */
export interface RearCurve {
  /** Voltages at 2 % lean and at 2 % rich. */
  readonly leanV: number;
  readonly richV: number;
  /** Half width of the step, in excess oxygen. */
  readonly width: number;
}

/** Excess oxygen at which the branches are said. */
const BRANCH_AT = 0.02;

const CELLS = 4;
/** Sum of the weights 1 to 4 with which the fill of the cells is felt at the outlet. */
const WEIGHTS = 10;
const START_FILL = 0.45;
const USUAL_REAR_V = 0.6;
/** Transfer units in a cell at which the fill begins to be felt behind it. */
const HALF_GRIP = 0.25;
/** More excess oxygen than this is a fuel cut; nothing is learned then. */
const AIR_FROM = 0.2;
/** How much less willingly oxygen is given than taken; an order of magnitude from memory. */
const RELEASE = 0.6;
/** Excess oxygen in the gas behind the converter between an empty and a full one. */
const EQUILIBRIUM_SPAN = 0.0048;
/** How quickly the model is steered to the recorded rear voltage: too slowly for it to follow a swing of the control. */
const STEER_FILL = 0.22;
const STEER_OXYGEN = 0.004;
const STEER_LAG_S = 1.4;
const MOST_BIAS = 0.03;
/** Lag of the sensor and gas taken while steering. */
const NOMINAL_LAG_S = 0.35;

/** Rear voltage for an excess of oxygen in steady state. */
export function rearVolts({ leanV, richV, width }: RearCurve, x: number): number {
  if (x > BRANCH_AT) return leanV - LEAN_FOLD_V * Math.log(x / BRANCH_AT);
  if (x < -BRANCH_AT) return richV + RICH_FOLD_V * Math.log(-x / BRANCH_AT);
  return leanV + (richV - leanV) / (1 + Math.exp(x / width));
}

/**
 * Voltage that a rear sensor without any lag would show behind a converter of `capacityG`, at each step.
 *
 * The converter is a row of cells: each takes from lean gas, or gives to rich gas, the share 1 - exp(-z) of the excess,
 * z being its transfer units times its empty (or full) part. Mass balance w * x * air (check 3.20): a store, not a filter
 * (check 3.38). The mean mixture is never known well enough to be integrated for a minute, so fill and mean are steered
 * to what the rear sensor showed, slowly (an observer): waves are predicted, the slow wander is not.
 * @param rate transfer units for each gram of storage and g/s of air (capacityGrid.ts)
 */
export function gasVoltage(capacityG: Grams, rate: number, input: ModelInput, curve: RearCurve): Float64Array {
  const { stepS, x, airGS, rearV } = input;
  const out = new Float64Array(x.length);
  const fill = new Float64Array(CELLS).fill(START_FILL);
  const cellG = capacityG / CELLS;
  const lagShare = 1 - Math.exp(-stepS / NOMINAL_LAG_S);
  const steer: Steering = { bias: 0, gap: 0, sinceS: 0 };
  let shown = rearV.find((value) => Number.isFinite(value)) ?? USUAL_REAR_V;
  for (let k = 0; k < x.length; k++) {
    const air = airGS[k] ?? 1;
    const entering = x[k] ?? Number.NaN;
    const inlet = Number.isFinite(entering) ? entering + steer.bias : 0;
    const volts = rearVolts(
      curve,
      passCells(fill, inlet, (rate * cellG) / air, (AIR_OXYGEN_MASS_SHARE * air * stepS) / cellG),
    );
    out[k] = volts;
    shown += (volts - shown) * lagShare;
    steerBySensor(steer, (rearV[k] ?? Number.NaN) - shown, stepS);
    if (Math.abs(inlet) < AIR_FROM) steerFill(steer, fill, stepS);
  }
  return out;
}

/**
 * One step of gas through the row of cells, whose fill is changed in place; returns the excess oxygen behind it.
 * `units` are the transfer units of a full cell, `perX` what an excess of 1 adds to the fill of a cell in one step.
 */
function passCells(fill: Float64Array, inlet: number, units: number, perX: number): number {
  let left = inlet;
  let weighed = 0;
  for (let i = 0; i < CELLS; i++) {
    const now = fill[i] ?? 0;
    const z = units * (left >= 0 ? 1 - now : RELEASE * now);
    const next = Math.min(1, Math.max(0, now + left * traded(z) * perX));
    fill[i] = next;
    left -= (next - now) / perX;
    weighed += next * (i + 1);
  }
  const grip = units / (HALF_GRIP + units);
  return left + EQUILIBRIUM_SPAN * grip * (weighed / WEIGHTS - 0.5);
}

/** 1 - exp(-z) on lines between steps of z, true to 4e-5: the exponential itself would take most of a fit's time. */
const STEPS_A_UNIT = 64;
const MOST_UNITS = 12;
const TRADED = Float64Array.from({ length: MOST_UNITS * STEPS_A_UNIT + 2 }, (_, i) => 1 - Math.exp(-i / STEPS_A_UNIT));

/** Share of an excess that a cell of z transfer units takes or gives. */
function traded(z: number): number {
  if (z >= MOST_UNITS) return 1;
  const place = z * STEPS_A_UNIT;
  const step = Math.floor(place);
  const low = TRADED[step] ?? 1;
  return low + ((TRADED[step + 1] ?? 1) - low) * (place - step);
}

/** What the model learns from the record while it runs: slow shifts of mean mixture and fill. */
interface Steering {
  bias: number;
  gap: number;
  sinceS: Seconds;
}

/** Takes in by how much the record lies above the model; NaN where there is no record at this step. */
function steerBySensor(steer: Steering, gap: number, stepS: Seconds): void {
  steer.sinceS += stepS;
  if (!Number.isFinite(gap)) return;
  steer.gap += (gap - steer.gap) * Math.min(1, steer.sinceS / (STEER_LAG_S + steer.sinceS));
  steer.sinceS = 0;
}

function steerFill(steer: Steering, fill: Float64Array, stepS: Seconds): void {
  const bias = steer.bias - STEER_OXYGEN * steer.gap * stepS;
  steer.bias = Math.max(-MOST_BIAS, Math.min(MOST_BIAS, bias));
  const shift = STEER_FILL * steer.gap * stepS;
  for (let i = 0; i < CELLS; i++) fill[i] = Math.min(1, Math.max(0, (fill[i] ?? 0) - shift));
}
