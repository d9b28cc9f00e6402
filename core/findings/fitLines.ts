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
  readonly ends: { readonly low: number; readonly high: number } | null;
}

/** Pull of slopes towards 0, in cases: keeps a rare reason from being believed on a handful of cases. */
const PULL = 0.3;
const STEPS = 100;

/**
 * Fits the lines of the additive model in two steps. First each reason by itself: a logistic regression gives the value
 * at which it speaks for neither side, its middle. Then all together: slopes alone, by maximum likelihood with a
 * quadratic penalty (Newton's method), each reason adding slope * (value cut to its ends - middle) to the logarithm of
 * odds, a missing one nothing. So a reason points the way it would point alone, and leaving one out leaves the others
 * true. Slopes that would be negative are held at 0 and the rest fitted again: every line is monotone. The same cases
 * give the same lines to the last digit; lines are rounded to 3 significant digits.
 */
export function fitLines(cases: readonly KnownCase[], wishes: readonly LineWish[]): Record<string, Line> {
  const failed = cases.map((one) => one.failed);
  const lines = wishes.map((wish) => ({ ...wish, ...middleOf(cases, wish) }));
  const rows = cases.map(({ features }) =>
    Float64Array.from(lines, ({ id, low, high, middle }) => {
      const value = features[id];
      return value === undefined ? 0 : Math.min(high, Math.max(low, value)) - middle;
    }),
  );
  const pulls = lines.map(({ low, high }) => pullFor(low, high));
  const slopes = monotone(rows, failed, pulls);
  return Object.fromEntries(
    lines.map(({ id, low, high, middle }, k): [string, Line] => [
      id,
      { middle: rounded(middle), slope: rounded(slopes[k] ?? 0), low: rounded(low), high: rounded(high) },
    ]),
  );
}

/** Where a reason by itself speaks for neither side, and its ends. Outside the ends a middle would never be met. */
function middleOf(cases: readonly KnownCase[], { id, ends }: LineWish): Omit<Line, 'slope'> {
  const seen = cases.flatMap(({ features, failed }) => {
    const value = features[id];
    return value === undefined ? [] : [{ value, failed }];
  });
  const values = sortedCopy(seen.map(({ value }) => value));
  if (values.length === 0) return { low: 0, high: 0, middle: 0 };
  const { low, high } = ends ?? { low: quantileSorted(values, 0.02), high: quantileSorted(values, 0.98) };
  const centre = (low + high) / 2;
  const rows = seen.map(({ value }) => Float64Array.of(Math.min(high, Math.max(low, value)) - centre, 1));
  const [slope = 0, level = 0] = regress(
    rows,
    seen.map((one) => one.failed),
    [pullFor(low, high), 0],
  );
  const middle = slope > 0 ? centre - level / slope : centre;
  return { low, high, middle: Math.min(high, Math.max(low, middle)) };
}

/** Penalty on a slope so that a line of any unit is pulled alike. */
function pullFor(low: number, high: number): number {
  return PULL * ((high - low) / 4) ** 2;
}

function monotone(rows: readonly Float64Array[], failed: readonly boolean[], pulls: readonly number[]): Float64Array {
  let free = pulls.map(() => true);
  for (;;) {
    const kept = rows.map((row) => row.filter((_, k) => free[k]));
    const found = regress(
      kept,
      failed,
      pulls.filter((_, k) => free[k]),
    );
    let at = 0;
    const slopes = Float64Array.from(free, (one) => (one ? (found[at++] ?? 0) : 0));
    if (slopes.every((slope) => slope >= 0)) return slopes;
    free = free.map((one, k) => one && (slopes[k] ?? 0) >= 0);
  }
}

/** Weights of a logistic regression without further terms: Newton's method on the likelihood less the penalty. */
function regress(rows: readonly Float64Array[], failed: readonly boolean[], pulls: readonly number[]): Float64Array {
  const size = pulls.length;
  const weights = new Float64Array(size);
  for (let step = 0; step < STEPS; step++) {
    const { gradient, curvature } = slopesAt(rows, failed, weights);
    for (let j = 0; j < size; j++) {
      gradient[j] = (gradient[j] ?? 0) - (pulls[j] ?? 0) * (weights[j] ?? 0);
      curvature[j * size + j] = (curvature[j * size + j] ?? 0) + (pulls[j] ?? 0);
    }
    const change = solveSymmetric(curvature, gradient);
    for (let j = 0; j < size; j++) weights[j] = (weights[j] ?? 0) + (change[j] ?? 0);
    if (change.every((one) => Math.abs(one) < 1e-10)) break;
  }
  return weights;
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

function rounded(value: number): number {
  return Number(value.toPrecision(3));
}
