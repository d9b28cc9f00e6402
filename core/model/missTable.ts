import type { Grams, Seconds } from '../units/quantities.ts';
import { CONVERTERS, DELAY_GRID_S, LAG_GRID_S, type Passage, TABLE_LENGTH } from './capacityGrid.ts';
import { laggedVoltage } from './rearSensor.ts';
import { gasVoltage } from './storageModel.ts';
import type { Compared, WindowInput } from './windowInput.ts';

/** A single miss counts no more than one of 0.3 V, squared: drop-outs, and moments that the model does not know. */
const MOST_SQUARE = 0.3 ** 2;
/** Gas is never delayed by more than this much of the mean delay, however little air flows. */
const MOST_STRETCH = 2.5;

/** How a model lies to the record of a window, for every choice of the grids. */
export interface Misses {
  /** What is left between them for every rate, capacity, lag and delay: mean square, V². */
  readonly left: Float64Array;
  /** How large the model's own waves are for every rate, capacity and lag, whenever they come: mean square, V². */
  readonly waves: Float64Array;
  /** The same of the record. */
  readonly recorded: number;
}

/**
 * Sets the model beside the record for every rate, capacity, lag and delay of the grids. The windows of one capture share
 * their converter and rear sensor, so that what follows from their tables can be added.
 */
export function missTable(window: WindowInput): Misses {
  const { steps, volts, around } = window.compared;
  const left = new Float64Array(TABLE_LENGTH);
  const waves = new Float64Array(TABLE_LENGTH / DELAY_GRID_S.length);
  const sources = DELAY_GRID_S.map((delayS) => sourceSteps(window, delayS));
  const misses = new Float64Array(steps.length);
  const sums = new Float64Array(misses.length + 1);
  const calm = new Float64Array(steps.length);
  let at = 0;
  for (const { capacityG, rate } of CONVERTERS) {
    const gasV = gasVoltage(capacityG, rate, window.input, window.curve);
    for (const lagS of LAG_GRID_S) {
      const shown = laggedVoltage(gasV, lagS, window.input.stepS);
      missesOf(shown, steps, calm, misses, sums);
      waves[at / DELAY_GRID_S.length] = meanSquare(misses, sums, around);
      for (const source of sources) {
        missesOf(shown, source, volts, misses, sums);
        left[at++] = meanSquare(misses, sums, around);
      }
    }
  }
  missesOf(calm, new Int32Array(steps.length), volts, misses, sums);
  return { left, waves, recorded: meanSquare(misses, sums, around) };
}

/** For each compared moment the step whose gas reaches the sensor then. */
function sourceSteps(window: WindowInput, delayS: Seconds): Int32Array {
  const last = window.input.x.length - 1;
  return window.compared.steps.map((k) =>
    Math.min(last, stepBefore(k, delayS / window.input.stepS, stretchAt(k, window))),
  );
}

/** Rear voltage of the model for one choice, at each step. */
export function shownVoltage(capacityG: Grams, { rate, lagS, delayS }: Passage, window: WindowInput): Float64Array {
  const { input, curve } = window;
  const shown = laggedVoltage(gasVoltage(capacityG, rate, input, curve), lagS, input.stepS);
  return shown.map((_, k) => shown[stepBefore(k, delayS / input.stepS, stretchAt(k, window))] ?? 0);
}

/** How much longer than on average the gas takes to the sensor at step k. */
function stretchAt(k: number, { input, airGS }: WindowInput): number {
  return Math.min(MOST_STRETCH, airGS / (input.airGS[k] ?? airGS));
}

function stepBefore(k: number, delaySteps: number, stretch: number): number {
  return Math.max(0, Math.round(k - (delaySteps > 0 ? delaySteps * stretch : delaySteps)));
}

/** Recorded minus modelled voltage at each compared moment, and the running sum of that. */
function missesOf(
  shown: Float64Array,
  source: Int32Array,
  volts: Float64Array,
  misses: Float64Array,
  sums: Float64Array,
): void {
  let sum = 0;
  for (let i = 0; i < misses.length; i++) {
    const miss = (volts[i] ?? 0) - (shown[source[i] ?? 0] ?? 0);
    misses[i] = miss;
    sum += miss;
    sums[i + 1] = sum;
  }
}

function meanSquare(misses: Float64Array, sums: Float64Array, around: Compared['around']): number {
  const count = misses.length;
  let squares = 0;
  for (let i = 0; i < count; i++) {
    let miss = misses[i] ?? 0;
    if (around) {
      const from = around.from[i] ?? 0;
      const to = around.to[i] ?? count;
      miss -= ((sums[to] ?? 0) - (sums[from] ?? 0)) / (to - from);
    }
    squares += Math.min(MOST_SQUARE, miss * miss);
  }
  return count > 0 ? squares / count : 0;
}
