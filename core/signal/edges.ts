import type { Series } from '../capture/series.ts';
import type { Seconds } from '../units/quantities.ts';
import type { Band } from './crossings.ts';

/** Time a trace takes from one level to the other, on one edge. */
export interface Edge {
  readonly startS: Seconds;
  readonly durationS: Seconds;
  readonly rising: boolean;
}

/** Steps of the sampling an edge must take, from the last sample outside one level to the first beyond the other. */
const LEAST_STEPS = 3;

/**
 * Durations of edges between two levels, interpolated between samples: from the last leaving of one level to the first
 * arrival at the other. An edge that takes fewer than 3 steps of the sampling cannot be timed (check 4.33): it is counted
 * in `untimed` and left out. Worked: a ramp 0.2 to 0.8 V in 120 ms takes 60 ms from 0.3 to 0.6 V.
 */
export function timeEdges(series: Series, band: Band): { readonly edges: Edge[]; readonly untimed: number } {
  const edges: Edge[] = [];
  let untimed = 0;
  let high: boolean | null = null;
  let left = 0;
  const { values } = series;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? 0;
    if (high === null) {
      if (value >= band.high) high = true;
      else if (value <= band.low) high = false;
    } else if (high ? value <= band.low : value >= band.high) {
      if (i - left >= LEAST_STEPS) edges.push(edgeBetween(series, left, i, band, !high));
      else untimed++;
      high = !high;
    }
    if (high !== null && (high ? value >= band.high : value <= band.low)) left = i;
  }
  return { edges, untimed };
}

function edgeBetween(series: Series, left: number, arrived: number, band: Band, rising: boolean): Edge {
  const [from, to] = rising ? [band.low, band.high] : [band.high, band.low];
  const startS = momentBetween(series, left, from);
  const endS = momentBetween(series, arrived - 1, to);
  return { startS, durationS: Math.max(0, endS - startS), rising };
}

function momentBetween({ timesS, values }: Series, i: number, level: number): Seconds {
  const t0 = timesS[i] ?? 0;
  const t1 = timesS[i + 1] ?? t0;
  const v0 = values[i] ?? level;
  const v1 = values[i + 1] ?? v0;
  return v1 === v0 ? t0 : t0 + Math.min(1, Math.max(0, (level - v0) / (v1 - v0))) * (t1 - t0);
}
