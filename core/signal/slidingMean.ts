import type { Series } from '../capture/series.ts';
import type { Seconds } from '../units/quantities.ts';

/**
 * Mean over a span of time centred on each sample, at any sampling; spans are cut at the ends of the series. The slow
 * part of a trace; what is left when it is taken away is the fast part. Same length as the series; `spanS` > 0.
 */
export function slidingMean(series: Series, spanS: Seconds): Float64Array {
  const { timesS, values } = series;
  const count = values.length;
  const means = new Float64Array(count);
  const half = spanS / 2;
  let first = 0;
  let last = 0;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const now = timesS[i] ?? 0;
    while (last < count && (timesS[last] ?? 0) <= now + half) {
      sum += values[last] ?? 0;
      last++;
    }
    while ((timesS[first] ?? 0) < now - half) {
      sum -= values[first] ?? 0;
      first++;
    }
    means[i] = sum / (last - first);
  }
  return means;
}
