import { correlationAt, parabolaOffset } from '../signal/crossCorrelation.ts';
import { remember } from '../signal/remember.ts';
import { readOffEvenly } from '../signal/valueAt.ts';
import { paired } from '../statistics/tTests.ts';
import type { Hertz, Seconds, Share } from '../units/quantities.ts';
import type { SensorSeries, WindowData } from './measure.ts';
import { bothVoltages, renewalRate } from './sensors.ts';
import { slowAndFast } from './slowAndFast.ts';
import { spanOf } from './switching.ts';

/** Where the rear trace is most alike to the front one. */
export interface LagFound {
  readonly lagS: Seconds;
  /** Correlation of the fast parts there. */
  readonly alike: number;
  /**
   * Chance that another lag is the true one: a periodic trace is alike to itself a period later too, and only because no
   * limit cycle is quite even does the true lag stand out, in part after part of the window.
   */
  readonly doubt: Share;
}

/** From a rear sensor that runs ahead, which only an exchange can explain, to the slowest gas and sensor. */
const LEAST_S: Seconds = -1;
const MOST_S: Seconds = 1.8;
const MOST_HZ: Hertz = 40;
/** Slower instruments bring samples of the two sensors too far apart to say how alike they are. */
export const LEAST_HZ: Hertz = 4;
const LEAST_STEPS = 60;
/** Parts of the window in which two lags are compared. */
const PIECES = 8;

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
  return bestOf(ahead, behind, Math.ceil(LEAST_S / stepS), Math.floor(MOST_S / stepS), stepS);
});

function fastSteps(sensor: SensorSeries, startS: Seconds, stepS: Seconds, count: number): Float64Array {
  return readOffEvenly(slowAndFast(sensor).fastPart, startS, stepS, count).map((value) =>
    Number.isFinite(value) ? value : 0,
  );
}

/** The highest peak, and whether the next one is lower for more than chance. */
function bestOf(
  ahead: Float64Array,
  behind: Float64Array,
  first: number,
  most: number,
  stepS: Seconds,
): LagFound | null {
  const alike = Array.from({ length: most - first + 1 }, (_, k) => correlationAt(ahead, behind, first + k));
  const peaks = alike.flatMap((here, k) => (here >= (alike[k - 1] ?? 2) && here > (alike[k + 1] ?? 2) ? [k] : []));
  peaks.sort((a, b) => (alike[b] ?? 0) - (alike[a] ?? 0));
  const [best, next] = peaks;
  if (best === undefined) return null;
  const here = alike[best] ?? 0;
  const offset = parabolaOffset(alike[best - 1] ?? here, here, alike[best + 1] ?? here);
  const doubt = next === undefined ? 0 : doubtBetween(ahead, behind, first + best, first + next);
  return { lagS: (first + best + offset) * stepS, alike: here, doubt };
}

/** Chance that the traces are not more alike at one shift than at another, from piece after piece of the window. */
function doubtBetween(ahead: Float64Array, behind: Float64Array, best: number, next: number): Share {
  const length = Math.floor((ahead.length - Math.abs(best) - Math.abs(next)) / PIECES);
  if (length < LEAST_STEPS / 4) return 1;
  const from = Math.max(0, -best, -next);
  const at = (shift: number) =>
    Array.from({ length: PIECES }, (_, p) => {
      const start = from + p * length;
      return correlationAt(
        ahead.subarray(start, start + length),
        behind.subarray(start + shift, start + shift + length),
        0,
      );
    });
  const test = paired(at(best), at(next));
  return test === null || test.t <= 0 ? 1 : test.p;
}
