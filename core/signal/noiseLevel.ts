import { quantileSorted } from '../statistics/quantile.ts';

/** Samples looked at; more do not make a median better. */
const ENOUGH = 4001;

/**
 * Standard deviation of the noise that rides on a trace, from the median of its absolute second differences: a slope
 * leaves no second difference and edges are rare, so only the noise remains. For independent noise of deviation s the
 * second difference has deviation s * sqrt(6), and the median absolute value of a normal variable is 0.6745 of its
 * deviation. On a trace sampled too slowly to show its own edges the result is too large: callers cap it.
 * Fewer than three values give 0.
 */
export function noiseLevel(values: ArrayLike<number>): number {
  const room = values.length - 2;
  if (room < 1) return 0;
  const stride = Math.max(1, Math.floor(room / ENOUGH));
  const differences = new Float64Array(Math.ceil(room / stride));
  for (let k = 0; k < differences.length; k++) {
    const i = k * stride;
    differences[k] = Math.abs((values[i] ?? 0) - 2 * (values[i + 1] ?? 0) + (values[i + 2] ?? 0));
  }
  return quantileSorted(differences.sort(), 0.5) / (0.6745 * Math.sqrt(6));
}
