import type { SensorSeries } from '../measures/measure.ts';
import { LEAST_SAMPLES, renewalRate } from '../measures/sensors.ts';
import { spanOf, switchesOf, whyNotCountable } from '../measures/switching.ts';
import type { Hertz, Seconds, Share } from '../units/quantities.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition, ConditionContext, ConditionResult } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** Edge between 0.30 and 0.60 V above which a front sensor is lazy. Printed limits 0.137 and 0.144 s (check 4.30); the trade uses 0.1 to 0.15 s. */
const LAZY_EDGE_S: Seconds = 0.2;
/** Time between 0.25 and 0.65 V for each switch above which it is, where single edges cannot be timed. */
const LAZY_UNDER_WAY_S: Seconds = 0.32;
/** Share of values between 0.25 and 0.65 V above which it is, where not even switches can be counted. */
const LAZY_SHARE: Share = 0.68;
const LEAST_VALUES = 40;
/** A slower instrument can only time edges that are lazy already. */
const LEAST_HZ: Hertz = 25;

/** Whether the front sensor goes from one end to the other without delay, as well as the instrument lets it be seen. */
export const frontQuick: Condition = {
  id: 'frontQuick',
  words: 'Front sensor quick',
  help: 'A lazy front sensor lets the mixture swing long and far, which fills and empties any converter: a good one then looks bad.',
  blocker: 'frontLazy',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const front = context.upstream;
    if (!front || front.series.values.length < LEAST_SAMPLES)
      return notRecorded(this.id, 'The front oxygen sensor was not recorded.');
    if (front.channel.role === 'upstreamLambda') return notRecorded(this.id, 'A wideband sensor has no edges to time.');
    return byEdges(this.id, front, context) ?? byTimeUnderWay(this.id, front, context);
  },
};

function byEdges(id: string, front: SensorSeries, { measures }: ConditionContext): ConditionResult | null {
  if (renewalRate(front.channel) < LEAST_HZ) return null;
  const rise = measures.get('upstreamRiseS')?.value;
  const fall = measures.get('upstreamFallS')?.value;
  if (rise == null || fall == null) return null;
  const detail = `Edges ${round(1000 * rise, 0)} ms lean to rich, ${round(1000 * fall, 0)} ms rich to lean, between 0.30 and 0.60 V.`;
  return Math.max(rise, fall) > LAZY_EDGE_S ? notMet(id, `${detail} Above ${1000 * LAZY_EDGE_S} ms.`) : met(id, detail);
}

/** For instruments too slow to time an edge: a quick sensor is seldom met on its way between the two ends. */
function byTimeUnderWay(id: string, front: SensorSeries, context: ConditionContext): ConditionResult {
  const { values } = front.series;
  const share = values.filter((value) => value > 0.25 && value < 0.65).length / values.length;
  const switches = switchesOf(front).length;
  if (!whyNotCountable(front, context) && switches > 0) {
    const underWayS = (share * spanOf(front)) / switches;
    const detail = `It is under way between 0.25 and 0.65 V for ${round(1000 * underWayS, 0)} ms a switch.`;
    return underWayS > LAZY_UNDER_WAY_S ? notMet(id, detail) : met(id, detail);
  }
  if (values.length < LEAST_VALUES)
    return notRecorded(id, 'Too slow an instrument, and too few values, to time an edge.');
  const detail = `Too slow to time an edge; ${percent(share)} of the values lie between 0.25 and 0.65 V.`;
  return share > LAZY_SHARE ? notMet(id, detail) : met(id, detail);
}
