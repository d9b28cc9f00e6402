/** Mean, standard deviation (n - 1) and lag-one autocorrelation of a list. */
export interface Moments {
  readonly count: number;
  readonly mean: number;
  /** NaN for fewer than two values. */
  readonly deviation: number;
  /** Sum of products of neighbours over the sum of squares, about the mean; NaN where all values are equal. */
  readonly lagOne: number;
}

/**
 * Moments of finite values in two passes with a correction for the rounding of the mean, which keeps the certified
 * digits of the NIST StRD univariate sets; the one-pass textbook sum does not. Lag-one autocorrelation as NIST
 * certifies it: r1 = sum (x[i] - m)(x[i+1] - m) / sum (x[i] - m)^2. An empty list gives NaN throughout.
 */
export function moments(values: ArrayLike<number>): Moments {
  const count = values.length;
  if (count === 0) return { count, mean: Number.NaN, deviation: Number.NaN, lagOne: Number.NaN };
  let sum = 0;
  for (let i = 0; i < count; i++) sum += values[i] ?? 0;
  const rough = sum / count;
  let rest = 0;
  for (let i = 0; i < count; i++) rest += (values[i] ?? 0) - rough;
  const mean = rough + rest / count;
  let squares = 0;
  let neighbours = 0;
  let before = 0;
  for (let i = 0; i < count; i++) {
    const off = (values[i] ?? 0) - mean;
    squares += off * off;
    if (i > 0) neighbours += before * off;
    before = off;
  }
  return {
    count,
    mean,
    deviation: count > 1 ? Math.sqrt(squares / (count - 1)) : Number.NaN,
    lagOne: squares > 0 ? neighbours / squares : Number.NaN,
  };
}
