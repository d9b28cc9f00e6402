import type { Series } from '../capture/series.ts';
import type { Seconds } from '../units/quantities.ts';

/** One change of state: at which moment the trace had left its old side, and which way it went. */
export interface Crossing {
  readonly timeS: Seconds;
  readonly rising: boolean;
}

/** The two levels of a hysteresis. low < high. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/**
 * Crossings of a hysteresis band: the state becomes high at a value >= band.high, low at a value <= band.low, and stays
 * what it was in between. Until the first of either it is unknown, so the first arrival is no crossing. Noise smaller
 * than the band adds none. Definition: check 6.06; two crossings make a cycle: check 6.07.
 *
 * Returns one crossing per change of state, in order. Its moment is interpolated on the edge's own steps, at the middle
 * of the band. Empty and one-sided series give none.
 */
export function hysteresisCrossings(series: Series, band: Band): Crossing[] {
  const { timesS, values } = series;
  const middle = (band.low + band.high) / 2;
  const crossings: Crossing[] = [];
  let high: boolean | null = null;
  /** Last sample on the old side of the middle level: where the edge that is being climbed set out. */
  let from = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? 0;
    if (high === null) {
      if (value >= band.high) high = true;
      else if (value <= band.low) high = false;
    } else if (high ? value <= band.low : value >= band.high) {
      high = !high;
      crossings.push({ timeS: momentAt(timesS, values, from, middle), rising: high });
    }
    if (high !== null && (high ? value > middle : value < middle)) from = i;
  }
  return crossings;
}

/** When the straight line from sample `from` to the next reaches `level`. */
function momentAt(timesS: Float64Array, values: Float64Array, from: number, level: number): Seconds {
  const t0 = timesS[from] ?? 0;
  const t1 = timesS[from + 1] ?? t0;
  const v0 = values[from] ?? level;
  const v1 = values[from + 1] ?? v0;
  const share = v1 === v0 ? 1 : (level - v0) / (v1 - v0);
  return t0 + Math.min(1, Math.max(0, share)) * (t1 - t0);
}
