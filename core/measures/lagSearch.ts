import { correlationAt, parabolaOffset } from '../signal/crossCorrelation.ts';
import { remember } from '../signal/remember.ts';
import { readOffEvenly } from '../signal/valueAt.ts';
import type { Hertz, Seconds } from '../units/quantities.ts';
import type { SensorSeries, WindowData } from './measure.ts';
import { bothVoltages, renewalRate } from './sensors.ts';
import { slowAndFast } from './slowAndFast.ts';
import { spanOf } from './switching.ts';

/** Where the rear trace is most alike to the front one. */
export interface LagFound {
  readonly lagS: Seconds;
  /** Correlation of the fast parts there. */
  readonly alike: number;
  /** Correlation at the next best lag that is not of the same peak. */
  readonly nextBest: number;
}

/** From a rear sensor that runs ahead, which only an exchange can explain, to the slowest gas and sensor. */
const LEAST_S: Seconds = -1;
const MOST_S: Seconds = 1.8;
const MOST_HZ: Hertz = 40;
/** Slower instruments bring samples of the two sensors too far apart to say how alike they are. */
export const LEAST_HZ: Hertz = 4;
const LEAST_STEPS = 60;

/**
 * Correlation of the fast parts of both traces over all lags from -1 to 1.8 s. The limit cycle is never quite even, so
 * the true lag stands out from its neighbours a period away, if the window is long enough. Null where an instrument is
 * too slow, a sensor is missing or the window too short.
 */
export const lagSearch = remember((data: WindowData): LagFound | null => {
  const both = bothVoltages(data);
  if (both.why !== null) return null;
  const rate = Math.min(renewalRate(both.front.channel), renewalRate(both.rear.channel), MOST_HZ);
  if (rate < LEAST_HZ) return null;
  const stepS = 1 / rate;
  const startS = Math.max(both.front.series.timesS[0] ?? 0, both.rear.series.timesS[0] ?? 0);
  const count = Math.floor((Math.min(spanOf(both.front), spanOf(both.rear)) - stepS) / stepS);
  if (count < LEAST_STEPS) return null;
  const ahead = fastSteps(both.front, startS, stepS, count);
  const behind = fastSteps(both.rear, startS, stepS, count);
  const first = Math.ceil(LEAST_S / stepS);
  const alike = Array.from({ length: Math.floor(MOST_S / stepS) - first + 1 }, (_, k) =>
    correlationAt(ahead, behind, first + k),
  );
  return bestOf(alike, first, stepS);
});

function fastSteps(sensor: SensorSeries, startS: Seconds, stepS: Seconds, count: number): Float64Array {
  const fast = { timesS: sensor.series.timesS, values: slowAndFast(sensor).fastValues };
  return readOffEvenly(fast, startS, stepS, count).map((value) => (Number.isFinite(value) ? value : 0));
}

function bestOf(alike: readonly number[], first: number, stepS: Seconds): LagFound | null {
  let best = -1;
  let next = Number.NEGATIVE_INFINITY;
  const peaks: number[] = [];
  for (let k = 1; k + 1 < alike.length; k++) {
    const here = alike[k] ?? Number.NaN;
    if (!(here >= (alike[k - 1] ?? here) && here > (alike[k + 1] ?? here))) continue;
    peaks.push(k);
    if (best < 0 || here > (alike[best] ?? here)) best = k;
  }
  if (best < 0) return null;
  for (const k of peaks) if (k !== best && (alike[k] ?? next) > next) next = alike[k] ?? next;
  const here = alike[best] ?? 0;
  const offset = parabolaOffset(alike[best - 1] ?? here, here, alike[best + 1] ?? here);
  return { lagS: (first + best + offset) * stepS, alike: here, nextBest: Math.max(0, next) };
}
