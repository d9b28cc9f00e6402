import { quantileSorted, sortedCopy } from '../statistics/quantile.ts';
import { solveSymmetric } from '../statistics/solveSymmetric.ts';
import type { Line } from './calibration.ts';

/** A case of known truth: what each reason saw, and whether the converter had failed. */
export interface KnownCase {
  readonly features: Readonly<Record<string, number>>;
  readonly failed: boolean;
}

/** What is decided beforehand about a line. */
export interface LineWish {
  readonly id: string;
  /** The cut-off ends, or null for the 2nd and 98th percentile of what was seen. */
  readonly ends: readonly [number, number] | null;
}

/** Pull of slopes and levels towards 0, in cases: keeps a rare reason from being believed on a handful of cases. */
const PULL = 2;
const STEPS = 100;

/**
 * Fits the lines of the additive model by logistic regression (maximum likelihood with a quadratic penalty, Newton's
 * method): each reason present adds slope * (value cut to its ends - middle) to the logarithm of odds, a missing one
 * adds nothing. Slopes that would be negative are held at 0, and the rest fitted again, so that every line is monotone.
 * The same cases give the same lines to the last digit; lines are rounded to 3 significant digits.
 */
export function fitLines(cases: readonly KnownCase[], wishes: readonly LineWish[]): Record<string, Line> {
  const ends = wishes.map(({ id, ends: given }) => given ?? endsOf(cases, id));
  const rows = cases.map(({ features }) => rowOf(features, wishes, ends));
  const failed = cases.map((one) => one.failed);
  let free = wishes.map(() => true);
  for (;;) {
    const weights = regress(rows, failed, free);
    const negative = wishes.map((_, k) => free[k] === true && (weights[2 * k] ?? 0) < 0);
    if (!negative.includes(true)) return linesFrom(weights, wishes, ends);
    free = free.map((one, k) => one && !negative[k]);
  }
}

function endsOf(cases: readonly KnownCase[], id: string): readonly [number, number] {
  const values = sortedCopy(cases.flatMap(({ features }) => features[id] ?? []));
  return values.length === 0 ? [0, 0] : [quantileSorted(values, 0.02), quantileSorted(values, 0.98)];
}

/** For each wish the value cut to its ends and counted from their middle, and 1; both 0 where the reason is missing. */
function rowOf(
  features: KnownCase['features'],
  wishes: readonly LineWish[],
  ends: readonly (readonly [number, number])[],
): Float64Array {
  const row = new Float64Array(2 * wishes.length);
  wishes.forEach(({ id }, k) => {
    const value = features[id];
    const [low, high] = ends[k] ?? [0, 0];
    if (value === undefined) return;
    row[2 * k] = Math.min(high, Math.max(low, value)) - (low + high) / 2;
    row[2 * k + 1] = 1;
  });
  return row;
}

/** Newton's method on the penalised likelihood. Entries of a reason that is not free keep slope 0. */
function regress(rows: readonly Float64Array[], failed: readonly boolean[], free: readonly boolean[]): Float64Array {
  const size = 2 * free.length;
  const weights = new Float64Array(size);
  const fixed = (j: number) => j % 2 === 0 && free[j >> 1] !== true;
  for (let step = 0; step < STEPS; step++) {
    const { gradient, curvature } = slopesAt(rows, failed, weights);
    for (let j = 0; j < size; j++) {
      gradient[j] = (gradient[j] ?? 0) - PULL * pullOn(j) * (weights[j] ?? 0);
      curvature[j * size + j] = (curvature[j * size + j] ?? 0) + PULL * pullOn(j);
      if (fixed(j)) isolate(gradient, curvature, j);
    }
    const change = solveSymmetric(curvature, gradient);
    let largest = 0;
    for (let j = 0; j < size; j++) {
      weights[j] = (weights[j] ?? 0) + (change[j] ?? 0);
      largest = Math.max(largest, Math.abs(change[j] ?? 0));
    }
    if (largest < 1e-10) break;
  }
  return weights;
}

/** Levels are pulled less than slopes: where a line crosses 0 is a matter of units. */
function pullOn(j: number): number {
  return j % 2 === 0 ? 0.1 : 0.05;
}

function slopesAt(
  rows: readonly Float64Array[],
  failed: readonly boolean[],
  weights: Float64Array,
): { gradient: Float64Array; curvature: Float64Array } {
  const size = weights.length;
  const gradient = new Float64Array(size);
  const curvature = new Float64Array(size * size);
  rows.forEach((row, i) => {
    let odds = 0;
    for (let j = 0; j < size; j++) odds += (row[j] ?? 0) * (weights[j] ?? 0);
    const p = 1 / (1 + Math.exp(-odds));
    const miss = (failed[i] ? 1 : 0) - p;
    for (let j = 0; j < size; j++) {
      const xj = row[j] ?? 0;
      if (xj === 0) continue;
      gradient[j] = (gradient[j] ?? 0) + miss * xj;
      for (let k = 0; k < size; k++)
        curvature[j * size + k] = (curvature[j * size + k] ?? 0) + p * (1 - p) * xj * (row[k] ?? 0);
    }
  });
  return { gradient, curvature };
}

/** Takes one unknown out of the system: its change is 0. */
function isolate(gradient: Float64Array, curvature: Float64Array, j: number): void {
  const size = gradient.length;
  gradient[j] = 0;
  for (let k = 0; k < size; k++) {
    curvature[j * size + k] = 0;
    curvature[k * size + j] = 0;
  }
  curvature[j * size + j] = 1;
}

function linesFrom(
  weights: Float64Array,
  wishes: readonly LineWish[],
  ends: readonly (readonly [number, number])[],
): Record<string, Line> {
  const lines: Record<string, Line> = {};
  wishes.forEach(({ id }, k) => {
    const [low, high] = ends[k] ?? [0, 0];
    const slope = weights[2 * k] ?? 0;
    const level = weights[2 * k + 1] ?? 0;
    // A slope of nothing has no middle: such a reason says nothing, whatever its level.
    const middle = slope > 1e-6 ? (low + high) / 2 - level / slope : (low + high) / 2;
    lines[id] = { middle: rounded(middle), slope: rounded(slope), low: rounded(low), high: rounded(high) };
  });
  return lines;
}

function rounded(value: number): number {
  return Number(value.toPrecision(3));
}
