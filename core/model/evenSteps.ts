import type { Series } from '../capture/series.ts';
import type { Seconds } from '../units/quantities.ts';

/**
 * A series brought to even steps: the mean of the samples around each step where there are several, the straight line
 * between neighbours where there is none. Steps further than `longestGapS` from their neighbours are NaN.
 */
export function evenSteps(
  { timesS, values }: Series,
  startS: Seconds,
  stepS: Seconds,
  count: number,
  longestGapS: Seconds,
): Float64Array {
  const out = new Float64Array(count).fill(Number.NaN);
  let i = 0;
  while (i < timesS.length && (timesS[i] ?? 0) < startS - stepS / 2) i++;
  for (let k = 0; k < count; k++) {
    const endS = startS + (k + 0.5) * stepS;
    let sum = 0;
    let taken = 0;
    for (; i < timesS.length && (timesS[i] ?? 0) < endS; i++) {
      sum += values[i] ?? 0;
      taken++;
    }
    out[k] = taken > 0 ? sum / taken : lineAt(timesS, values, i, startS + k * stepS, longestGapS);
  }
  return out;
}

/** Value at timeS on the line between sample next - 1 and next. */
function lineAt(timesS: Float64Array, values: Float64Array, next: number, timeS: number, longestGapS: Seconds): number {
  if (next === 0 || next >= timesS.length) return Number.NaN;
  const t0 = timesS[next - 1] ?? 0;
  const t1 = timesS[next] ?? t0;
  if (t1 - t0 > longestGapS) return Number.NaN;
  const v0 = values[next - 1] ?? Number.NaN;
  const v1 = values[next] ?? v0;
  return t1 > t0 ? v0 + ((v1 - v0) * (timeS - t0)) / (t1 - t0) : v0;
}
