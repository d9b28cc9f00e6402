import { seriesOf } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import type { Seconds } from '../units/quantities.ts';
import { fuelCuts } from '../windows/fuelCuts.ts';
import type { Stretch } from '../windows/window.ts';
import type { SensorSeries, WindowData } from './measure.ts';

/** How both sensors went through one fuel cut. Moments in capture seconds; null where a sensor did not do it. */
export interface FuelCutAnswer {
  readonly cut: Stretch;
  /** The front and the rear sensor went lean: below 0.3 V. */
  readonly frontLeanS: Seconds | null;
  readonly rearLeanS: Seconds | null;
  /** They came back to rich: above 0.45 V for the first time after the cut. */
  readonly frontBackS: Seconds | null;
  readonly rearBackS: Seconds | null;
  /** Whether the rear sensor was above 0.45 V when the cut began, so that its fall can be timed. */
  readonly rearWasRich: boolean;
}

const LEAN_V = 0.3;
const RICH_V = 0.45;
/** The cut is inferred from engine speed, throttle or status, which run ahead of or behind the gas by up to this. */
const SLACK_S: Seconds = 1;
/** How long after the cut a return is still laid to it. */
const LONGEST_S: Seconds = 25;

/** How both sensors answered each fuel cut that lies in the window. Empty without a rear sensor or a cut. */
export const fuelCutAnswers = remember((data: WindowData): FuelCutAnswer[] => {
  const { capture, upstream, downstream, window } = data;
  if (!downstream) return [];
  return fuelCuts(capture)
    .filter(({ startS, endS }) => startS >= window.startS - SLACK_S && endS <= window.endS)
    .map((cut) => answerTo(cut, upstream, downstream));
});

function answerTo(cut: Stretch, front: SensorSeries | null, rear: SensorSeries): FuelCutAnswer {
  const startS = cut.startS - SLACK_S;
  const frontVolts = front && front.channel.role === 'upstreamO2' ? front : null;
  const frontLeanS = frontVolts ? firstBelow(frontVolts, startS, cut.endS + SLACK_S) : null;
  const rearLeanS = firstBelow(rear, frontLeanS ?? cut.startS, cut.endS + 3 * SLACK_S);
  const frontBackS =
    frontVolts && frontLeanS !== null ? firstAbove(frontVolts, cut.endS - SLACK_S, cut.endS + LONGEST_S) : null;
  const rearBackS =
    rearLeanS === null ? null : firstAbove(rear, Math.max(rearLeanS, frontBackS ?? cut.endS), cut.endS + LONGEST_S);
  const before = seriesOf(rear.channel, startS - SLACK_S, frontLeanS ?? cut.startS).values;
  return { cut, frontLeanS, rearLeanS, frontBackS, rearBackS, rearWasRich: (before[before.length - 1] ?? 0) > RICH_V };
}

function firstBelow({ channel }: SensorSeries, fromS: Seconds, toS: Seconds): Seconds | null {
  const { timesS, values } = seriesOf(channel, fromS, toS);
  const i = values.findIndex((value, k) => value <= LEAN_V && (values[k + 1] ?? value) <= LEAN_V);
  return i < 0 ? null : (timesS[i] ?? null);
}

function firstAbove({ channel }: SensorSeries, fromS: Seconds, toS: Seconds): Seconds | null {
  const { timesS, values } = seriesOf(channel, fromS, toS);
  const i = values.findIndex((value, k) => value >= RICH_V && (values[k + 1] ?? value) >= RICH_V);
  return i < 0 ? null : (timesS[i] ?? null);
}
