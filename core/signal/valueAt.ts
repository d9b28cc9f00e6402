import type { Series } from '../capture/series.ts';
import type { SampleIndex, Seconds } from '../units/quantities.ts';

/** Index of the last sample at or before a moment, -1 where all lie after it. Times ascend. */
export function lastAtOrBefore(timesS: Float64Array, timeS: Seconds): SampleIndex {
  let low = 0;
  let high = timesS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((timesS[middle] ?? 0) <= timeS) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Value on the straight line between the samples around a moment; NaN outside the series. */
export function valueAt(series: Series, timeS: Seconds): number {
  const { timesS, values } = series;
  const before = lastAtOrBefore(timesS, timeS);
  if (before < 0 || timeS > (timesS[timesS.length - 1] ?? Number.NEGATIVE_INFINITY)) return Number.NaN;
  const t0 = timesS[before] ?? 0;
  const v0 = values[before] ?? Number.NaN;
  if (before + 1 >= timesS.length) return v0;
  const t1 = timesS[before + 1] ?? t0;
  const v1 = values[before + 1] ?? v0;
  return t1 > t0 ? v0 + ((v1 - v0) * (timeS - t0)) / (t1 - t0) : v0;
}

/** A series read off at even steps, starting with startS: `count` values, NaN outside the series. */
export function readOffEvenly(series: Series, startS: Seconds, stepS: Seconds, count: number): Float64Array {
  const { timesS, values } = series;
  const out = new Float64Array(count).fill(Number.NaN);
  const last = timesS.length - 1;
  if (last < 0) return out;
  let at = 0;
  for (let k = 0; k < count; k++) {
    const t = startS + k * stepS;
    if (t < (timesS[0] ?? 0) || t > (timesS[last] ?? 0)) continue;
    while (at < last && (timesS[at + 1] ?? 0) <= t) at++;
    const t0 = timesS[at] ?? 0;
    const v0 = values[at] ?? Number.NaN;
    const t1 = timesS[at + 1] ?? t0;
    const v1 = values[at + 1] ?? v0;
    out[k] = t1 > t0 ? v0 + ((v1 - v0) * (t - t0)) / (t1 - t0) : v0;
  }
  return out;
}
