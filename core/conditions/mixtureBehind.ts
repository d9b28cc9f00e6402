import { rangeOf, rearVoltage } from '../measures/sensors.ts';
import { round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** 0.6 to 0.75 V with most, up to 0.8 V accepted (common practice, no source). */
const RICH_REAR_V = 0.8;

/** A rear sensor that rests richer than a closed loop leaves it: the front sensor is being misled. */
export const mixtureBehind: Condition = {
  id: 'mixtureBehind',
  words: 'Rear sensor does not rest rich',
  help: 'When unburned oxygen reaches the front sensor, from a misfire or a leak ahead of it, the control adds fuel: the rear sensor then rests above 0.8 V. So it does with a front sensor that reads lean, or an engine that runs rich.',
  blocker: 'richBehind',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const rear = rearVoltage(context).sensor;
    if (!rear) return notRecorded(this.id, 'It takes the rear sensor as a voltage to tell.');
    const { middle } = rangeOf(rear);
    const detail = `It rests at ${round(middle, 2)} V.`;
    return middle > RICH_REAR_V ? notMet(this.id, detail) : met(this.id, detail);
  },
};
