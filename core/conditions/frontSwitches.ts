import { LEAST_SAMPLES, rangeOf } from '../measures/sensors.ts';
import { switchRate, whyNotCountable } from '../measures/switching.ts';
import { robustRange } from '../statistics/quantile.ts';
import { percent, round, span } from '../words/numbers.ts';
import type { Condition, ConditionContext, ConditionResult } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** Printed least: 0.8 Hz held at raised speed on one make (check 3.35), 3 crossings in 10 s at idle on another (check 6.07). */
const LEAST_HZ = 0.25;
/** Where nothing can be counted, both sides must at least hold this share of the values. */
const LEAST_SIDE = 0.1;
/** A wideband sensor under closed loop moves by a per cent or more between its extremes (from memory). */
const LEAST_LAMBDA_SWING = 0.004;

export const frontSwitches: Condition = {
  id: 'frontSwitches',
  words: 'Front sensor switches',
  help: 'A front sensor that does not swing makes no waves for the converter to smooth, so a calm rear sensor proves nothing.',
  blocker: 'frontNotSwitching',
  kinds: ['hold', 'cruise', 'idle', 'mixed'],
  judge(context) {
    const front = context.upstream;
    if (!front || front.series.values.length < LEAST_SAMPLES)
      return notRecorded(this.id, 'The front oxygen sensor was not recorded.');
    if (front.channel.role === 'upstreamLambda') return byLambda(this.id, front.series.values);
    return byVoltage(this.id, context);
  },
};

function byLambda(id: string, values: Float64Array): ConditionResult {
  const { low, high } = robustRange(values);
  const detail = `Wideband sensor; lambda ${span(low, high, 3, '')}.`.replace(' .', '.');
  return high - low >= LEAST_LAMBDA_SWING ? met(id, detail) : notMet(id, `${detail} The mixture hardly moves.`);
}

function byVoltage(id: string, context: ConditionContext): ConditionResult {
  const front = context.upstream;
  if (!front) return notRecorded(id, 'The front oxygen sensor was not recorded.');
  if (whyNotCountable(front, context)) {
    const { values } = front.series;
    const lean = values.filter((value) => value <= 0.3).length / values.length;
    const rich = values.filter((value) => value >= 0.6).length / values.length;
    const detail = `Too slow to count; ${percent(lean)} of the values are lean, ${percent(rich)} rich.`;
    return Math.min(lean, rich) >= LEAST_SIDE ? met(id, detail) : notMet(id, detail);
  }
  const rate = switchRate(front);
  const { low, high } = rangeOf(front);
  const detail = `${round(rate, 2)} Hz, ${span(low, high, 2, 'V')}.`;
  return rate >= LEAST_HZ
    ? met(id, detail)
    : notMet(id, `${detail} It should go back and forth at least ${LEAST_HZ} times a second.`);
}
