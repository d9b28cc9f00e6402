import type { Channel } from '../capture/channel.ts';
import type { Role } from '../capture/roles.ts';
import { seriesOf } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import type { Seconds } from '../units/quantities.ts';
import { fuelCuts } from '../windows/fuelCuts.ts';
import type { Stretch } from '../windows/window.ts';
import type { SensorSeries, WindowData } from './measure.ts';

/** How both sensors went through one fuel cut. Moments in capture seconds; null where a sensor did not do it. */
export interface FuelCutAnswer {
  readonly cut: Stretch;
  /** The front and the rear sensor went lean: 0.3 V or less, or a lambda of 1.1. */
  readonly frontLeanS: Seconds | null;
  readonly rearLeanS: Seconds | null;
  /** They came back to rich: 0.45 V, or a lambda of 1.01, for the first time after the cut. */
  readonly frontBackS: Seconds | null;
  readonly rearBackS: Seconds | null;
  /** Whether the rear sensor was above 0.45 V when the cut began, so that its fall can be timed. */
  readonly rearWasRich: boolean;
}

/**
 * Readings at which a sensor counts as lean, and as back: volts of a switching sensor, lambda of a wideband one. The
 * voltages are those of usual switch points (check 4.10 and switching.ts); the lambdas common practice, no source.
 */
const LEAN_V = 0.3;
const RICH_V = 0.45;
const LEAN_LAMBDA = 1.1;
const BACK_LAMBDA = 1.01;
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
  const frontLeanS = front ? first(front.channel, startS, cut.endS + SLACK_S, isLean) : null;
  const rearLeanS = first(rear.channel, frontLeanS ?? cut.startS, cut.endS + 3 * SLACK_S, isLean);
  const lastS = cut.endS + LONGEST_S;
  // A short cut ends before its slack is over: what the front sensor read ahead of its fall is no return.
  const frontBackS =
    front && frontLeanS !== null ? first(front.channel, Math.max(frontLeanS, cut.endS - SLACK_S), lastS, isBack) : null;
  const fromS = rearLeanS === null ? lastS : Math.max(rearLeanS, frontBackS ?? cut.endS);
  const before = seriesOf(rear.channel, startS - SLACK_S, frontLeanS ?? cut.startS).values;
  return {
    cut,
    frontLeanS,
    rearLeanS,
    frontBackS,
    rearBackS: first(rear.channel, fromS, lastS, isBack),
    rearWasRich: (before[before.length - 1] ?? 0) > RICH_V,
  };
}

function isLean(role: Role, value: number): boolean {
  return role === 'upstreamLambda' ? value >= LEAN_LAMBDA : value <= LEAN_V;
}

function isBack(role: Role, value: number): boolean {
  return role === 'upstreamLambda' ? value <= BACK_LAMBDA : value >= RICH_V;
}

/** First sample in a stretch that reads as asked, and the next one with it, so that a spike is no answer. */
function first(
  channel: Channel,
  fromS: Seconds,
  toS: Seconds,
  reads: (role: Role, value: number) => boolean,
): Seconds | null {
  const { timesS, values } = seriesOf(channel, fromS, toS);
  const i = values.findIndex((value, k) => reads(channel.role, value) && reads(channel.role, values[k + 1] ?? value));
  return i < 0 ? null : (timesS[i] ?? null);
}
