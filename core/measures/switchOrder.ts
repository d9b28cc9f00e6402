import { type Crossing, hysteresisCrossings } from '../signal/crossings.ts';
import { remember } from '../signal/remember.ts';
import { thinned } from '../signal/thinned.ts';
import { quantilesOf } from '../statistics/quantile.ts';
import type { Hertz, Seconds } from '../units/quantities.ts';
import type { SensorSeries, WindowData } from './measure.ts';
import { bothVoltages, rangeOf, renewalRate } from './sensors.ts';
import { swingOf } from './slowAndFast.ts';

/** In which order the two traces switch, from each switch of the rear one to its neighbours in the front one. */
export interface SwitchOrder {
  /** Middle time from a switch of the rear trace to the next one of the front trace in the same direction. */
  readonly aheadS: Seconds;
  /** Middle time that has gone by since the last one of the front trace in the same direction. */
  readonly behindS: Seconds;
  /** Middle half of the times ahead lies within this. */
  readonly spreadS: Seconds;
  /** Of the front trace. */
  readonly periodS: Seconds;
  /** Time between two new values of the slower sensor: no moment is known better. */
  readonly stepS: Seconds;
}

const MOST_HZ: Hertz = 100;
/** Switches of either trace below which no order is told. */
const LEAST_SWITCHES = 8;
/** Traces of which one switches this much more often than the other do not switch together. */
const MOST_UNLIKE = 4 / 3;
/** Values a period below which the switches that are seen may be an alias. */
const LEAST_A_PERIOD = 6;

/**
 * The order in which front and rear trace switch about their own middles, at any speed of switching. Null where either
 * is missing or switches too seldom, where they do not switch together, and where the instrument is too slow for it.
 */
export const switchOrder = remember((data: WindowData): SwitchOrder | null => {
  const both = bothVoltages(data);
  if (both.why !== null) return null;
  const front = switchesAboutMiddle(both.front);
  const rear = switchesAboutMiddle(both.rear);
  const unlike = Math.max(front.length / rear.length, rear.length / front.length);
  if (Math.min(front.length, rear.length) < LEAST_SWITCHES || unlike > MOST_UNLIKE) return null;
  const spanS = (front[front.length - 1]?.timeS ?? 0) - (front[0]?.timeS ?? 0);
  const periodS = (2 * spanS) / (front.length - 1);
  const stepS = 1 / Math.min(renewalRate(both.front.channel), renewalRate(both.rear.channel));
  if (!(periodS >= LEAST_A_PERIOD * stepS)) return null;
  const gaps = [true, false].flatMap((rising) => gapsBetween(timesOf(rear, rising), timesOf(front, rising)));
  if (gaps.length < LEAST_SWITCHES) return null;
  const [low = 0, aheadS = 0, high = 0] = quantilesOf(
    gaps.map(({ ahead }) => ahead),
    [0.25, 0.5, 0.75],
  );
  const [behindS = 0] = quantilesOf(
    gaps.map(({ behind }) => behind),
    [0.5],
  );
  return { aheadS, behindS, spreadS: high - low, periodS, stepS };
});

/** Switches about the middle of a trace's own swing, over a band of a quarter of it. */
function switchesAboutMiddle(sensor: SensorSeries): Crossing[] {
  const range = rangeOf(sensor);
  const middle = (range.low + range.high) / 2;
  const half = swingOf(range) / 8;
  if (!(half > 0)) return [];
  return hysteresisCrossings(thinned(sensor.series, MOST_HZ), { low: middle - half, high: middle + half });
}

function timesOf(switches: readonly Crossing[], rising: boolean): Seconds[] {
  return switches.filter((one) => one.rising === rising).map(({ timeS }) => timeS);
}

/** For each of `times` the time to the next of `others` and since the last one, where it has both. */
function gapsBetween(times: readonly Seconds[], others: readonly Seconds[]): { ahead: Seconds; behind: Seconds }[] {
  let next = 0;
  return times.flatMap((time) => {
    while (next < others.length && (others[next] ?? 0) < time) next++;
    const after = others[next];
    const before = others[next - 1];
    return after === undefined || before === undefined ? [] : [{ ahead: after - time, behind: time - before }];
  });
}
