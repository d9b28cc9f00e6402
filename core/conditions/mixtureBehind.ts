import { frontVoltage, rangeOf, rearVoltage, richShare } from '../measures/sensors.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition, ConditionContext } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';
import { trimsOf } from './trimsOf.ts';

/** 0.6 to 0.75 V with most, up to 0.8 V accepted (common practice, no source). Above this it is too rich by itself. */
const RICH_V = 0.86;
/** Above this it is, if trims or front sensor say that oxygen misleads the control; trims of ±5 % are usual on any car. */
const SUSPECT_V = 0.76;
const ADDING = 5;
const LEANING = 0.475;

/** A rear sensor that rests richer than a closed loop leaves it: the front sensor is being misled. */
export const mixtureBehind: Condition = {
  id: 'mixtureBehind',
  words: 'Rear sensor does not rest rich',
  help: 'When unburned oxygen reaches the front sensor, from a misfire or a leak ahead of it, the control adds fuel: the rear sensor then rests at 0.8 V and more. So it does with a front sensor that reads lean, or an engine that runs rich.',
  blocker: 'richBehind',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const rear = rearVoltage(context).sensor;
    if (!rear) return notRecorded(this.id, 'It takes the rear sensor as a voltage to tell.');
    const { middle } = rangeOf(rear);
    const detail = `It rests at ${round(middle, 2)} V.`;
    if (middle > RICH_V) return notMet(this.id, detail);
    const sign = middle > SUSPECT_V ? misled(context) : null;
    return sign ? notMet(this.id, `${detail} ${sign}`) : met(this.id, detail);
  },
};

/** What says that the control takes the mixture for leaner than it is; null where nothing does. */
function misled(context: ConditionContext): string | null {
  const { short, long } = trimsOf(context.capture, context.bank, context.window);
  const trims = (short ?? 0) + (long ?? 0);
  if (trims >= ADDING) return `The trims add ${round(trims, 1)} % of fuel all the same.`;
  const front = frontVoltage(context).sensor;
  const rich = front ? richShare(front) : 0.5;
  return rich <= LEANING ? `The front sensor is rich for only ${percent(rich)} of the time.` : null;
}
