import { LEAST_SAMPLES } from '../measures/sensors.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition, ConditionContext, ConditionResult } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** Edge between 0.30 and 0.60 V above which a front sensor is lazy. Printed limits: 0.137 and 0.144 s (check 4.30); the trade uses 0.1 to 0.15 s. */
const LAZY_S = 0.15;
/** Share of values between 0.25 and 0.65 V above which a sensor spends too long under way. */
const LAZY_SHARE = 0.5;
const LEAST_VALUES = 40;

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
    return byEdges(this.id, context) ?? byTimeUnderWay(this.id, front.series.values);
  },
};

function byEdges(id: string, { measures }: ConditionContext): ConditionResult | null {
  const rise = measures.get('upstreamRiseS')?.value;
  const fall = measures.get('upstreamFallS')?.value;
  if (rise == null || fall == null) return null;
  const detail = `Edges ${round(1000 * rise, 0)} ms lean to rich, ${round(1000 * fall, 0)} ms rich to lean, between 0.30 and 0.60 V.`;
  return Math.max(rise, fall) > LAZY_S ? notMet(id, `${detail} Above ${1000 * LAZY_S} ms.`) : met(id, detail);
}

/** For instruments too slow to time an edge: a quick sensor is seldom met on its way between the two ends. */
function byTimeUnderWay(id: string, values: Float64Array): ConditionResult {
  if (values.length < LEAST_VALUES)
    return notRecorded(id, 'Too slow an instrument, and too few values, to time an edge.');
  const share = values.filter((value) => value > 0.25 && value < 0.65).length / values.length;
  const detail = `Too slow to time an edge; ${percent(share)} of the values lie between 0.25 and 0.65 V.`;
  return share > LAZY_SHARE ? notMet(id, detail) : met(id, detail);
}
