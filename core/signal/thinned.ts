import type { Series } from '../capture/series.ts';
import type { Hertz } from '../units/quantities.ts';

/**
 * A series with at most about `mostHz` samples a second: groups of neighbours become their mean time and mean value. For
 * kernels that look at waves far slower than a fast recorder. A series that is slow enough is returned as it is.
 */
export function thinned(series: Series, mostHz: Hertz): Series {
  const { timesS, values } = series;
  const spanS = (timesS[timesS.length - 1] ?? 0) - (timesS[0] ?? 0);
  const group = Math.floor(values.length / Math.max(1, spanS * mostHz));
  if (!(group > 1)) return series;
  const count = Math.floor(values.length / group);
  const thin = { timesS: new Float64Array(count), values: new Float64Array(count) };
  for (let k = 0; k < count; k++) {
    let time = 0;
    let value = 0;
    for (let i = k * group; i < (k + 1) * group; i++) {
      time += timesS[i] ?? 0;
      value += values[i] ?? 0;
    }
    thin.timesS[k] = time / group;
    thin.values[k] = value / group;
  }
  return thin;
}
