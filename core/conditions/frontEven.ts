import { findChannel } from '../capture/capture.ts';
import { seriesOf } from '../capture/series.ts';
import type { SensorSeries } from '../measures/measure.ts';
import { LEAST_SAMPLES, richShare } from '../measures/sensors.ts';
import { slowAndFast, swingOf } from '../measures/slowAndFast.ts';
import { spellsOf } from '../measures/spells.ts';
import { whyNotCountable } from '../measures/switching.ts';
import { median, quantilesOf } from '../statistics/quantile.ts';
import type { RevolutionsPerMinute, Seconds, Share } from '../units/quantities.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition, ConditionContext } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** A rich or lean spell shorter than this share of the usual one in the same direction was cut short. */
const SHORT: Share = 0.4;
const MOST_SHORT: Share = 0.05;
const LEAST_SHORT = 4;
const LEAST_SPELLS = 20;
/** Lambda goes this far lean in bursts, and so much farther than rich that no control swings like it. */
const BURST_LAMBDA = 0.07;
const LEANWARD = 0.2;
const LEAST_LAMBDAS = 60;
/** Beyond this lambda it is a fuel cut that lies in the window, and no burst. */
const CUT_LAMBDA = 1.2;
/** An engine that jolts by this much at a held speed, while the front sensor is lean for longer than rich. */
const ROUGH: RevolutionsPerMinute = 50;
const LEANED: Share = 0.43;
const LEAST_SPEEDS = 25;
/** Bursts come all the time, a change of load once: they must show in three of four parts of the window. */
const PARTS = 4;
const IN_PARTS = 3;

/**
 * Signs of oxygen that reaches the front sensor in bursts and not by the control (common practice, no source). A closed
 * loop swings evenly: its rich and lean spells are of nearly one length each, and about as far rich as lean. The oxygen
 * of a cylinder that did not fire is spread over some 0.05 to 0.1 s: it cuts rich spells in two and pulls lambda lean.
 */
export const frontEven: Condition = {
  id: 'frontEven',
  words: 'Front sensor swings evenly',
  help: 'A closed loop swings evenly. Bursts of oxygen from cylinders that do not fire, or from a leak that sucks air with the pulses, cut its swings short or pull it lean; at a slow instrument only a rough engine with a lean front sensor tells of them.',
  blocker: 'frontDisturbed',
  kinds: ['hold', 'cruise'],
  judge(context) {
    const front = context.upstream;
    if (!front || front.series.values.length < LEAST_SAMPLES)
      return notRecorded(this.id, 'The front oxygen sensor was not recorded.');
    const lambda = front.channel.role === 'upstreamLambda';
    const signs = lambda ? [burstsLean(front, context)] : [cutShort(front, context), roughAndLean(front, context)];
    const found = signs.filter((sign) => sign !== null);
    if (found.length > 0) return notMet(this.id, found.join(' '));
    return met(this.id, 'No bursts of oxygen show in the front sensor as far as this instrument can see.');
  },
};

function cutShort(front: SensorSeries, context: ConditionContext): string | null {
  if (whyNotCountable(front, context)) return null;
  const { rich, lean } = spellsOf(front);
  const [richS, leanS] = [rich, lean].map((spells) => median(spells.map(({ lengthS }) => lengthS)));
  if (richS === undefined || leanS === undefined || rich.length + lean.length < LEAST_SPELLS) return null;
  const short = [
    ...rich.filter(({ lengthS }) => lengthS < SHORT * richS),
    ...lean.filter(({ lengthS }) => lengthS < SHORT * leanS),
  ];
  if (short.length < Math.max(LEAST_SHORT, MOST_SHORT * (rich.length + lean.length))) return null;
  if (!throughout(context, (startS, endS) => short.some(({ fromS }) => fromS >= startS && fromS < endS))) return null;
  return `${short.length} of ${rich.length + lean.length} rich and lean spells of the front sensor lasted less than ${SHORT} of the usual ${round(richS, 2)} s and ${round(leanS, 2)} s.`;
}

function burstsLean({ channel, series }: SensorSeries, context: ConditionContext): string | null {
  if (series.values.length < LEAST_LAMBDAS) return null;
  const [low = 1, middle = 1, high = 1] = quantilesOf(series.values, [0.025, 0.5, 0.975]);
  const lean = high - middle;
  const rich = middle - low;
  if (high > CUT_LAMBDA || lean < BURST_LAMBDA || lean - rich < LEANWARD * (lean + rich)) return null;
  const bursts = (startS: number, endS: number) =>
    seriesOf(channel, startS, endS).values.some((value) => value - middle >= BURST_LAMBDA);
  if (!throughout(context, bursts)) return null;
  return `Lambda goes up to ${round(lean, 3)} lean of its middle, but only ${round(rich, 3)} rich of it.`;
}

/** Whether something shows in most parts of the window. */
function throughout({ window }: ConditionContext, shows: (startS: Seconds, endS: Seconds) => boolean): boolean {
  const stepS = (window.endS - window.startS) / PARTS;
  const starts = Array.from({ length: PARTS }, (_, part) => window.startS + part * stepS);
  return starts.filter((startS) => shows(startS, startS + stepS)).length >= IN_PARTS;
}

/** What is left to see where the front sensor is too slow to be followed: rough running under a lean mean. */
function roughAndLean(front: SensorSeries, { capture, window }: ConditionContext): string | null {
  const channel = findChannel(capture, 'rpm', null);
  if (!channel) return null;
  const series = seriesOf(channel, window.startS, window.endS);
  const rich = richShare(front);
  // A share read off few values by chance: with n of them it may lie 1.64 √(0.25/n) below a half, one time in twenty.
  const chance = 0.5 - 1.64 * Math.sqrt(0.25 / front.series.values.length);
  if (series.values.length < LEAST_SPEEDS || rich > Math.min(LEANED, chance)) return null;
  const swing = swingOf(slowAndFast({ channel, series }).fast);
  if (swing < ROUGH) return null;
  return `The engine jolts by ${round(swing, 0)} 1/min while the front sensor is rich for only ${percent(rich)} of the time.`;
}
