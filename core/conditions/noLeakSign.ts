import { frontVoltage, rangeOf, rearVoltage } from '../measures/sensors.ts';
import { moments } from '../signal/moments.ts';
import { percent, round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** A rear sensor that rests this lean behind a front sensor that is rich half of the time breathes air. */
const LEAN_REAR_V = 0.25;
const RICH_FRONT_SHARE = 0.35;

export const noLeakSign: Condition = {
  id: 'noLeakSign',
  words: 'No sign of a leak',
  help: 'Air that enters between engine and rear sensor makes that sensor read lean whatever the converter does. It shows as a rear voltage that rests low, with dips, while the front sensor and the trims are balanced.',
  blocker: 'leak',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const front = frontVoltage(context).sensor;
    const rear = rearVoltage(context).sensor;
    if (!front || !rear) return notRecorded(this.id, 'It takes both sensors as voltages to tell.');
    const { values } = front.series;
    const rich = values.filter((value) => value > 0.45).length / values.length;
    const { low, middle, high } = rangeOf(rear);
    const detail = `Rear sensor rests at ${round(middle, 2)} V (mean ${round(moments(rear.series.values).mean, 2)} V) while the front one is rich for ${percent(rich)} of the time`;
    if (middle < LEAN_REAR_V && high < 0.55 && rich > RICH_FRONT_SHARE && low < 0.15)
      return notMet(this.id, `${detail}: air may enter ahead of the rear sensor.`);
    return met(this.id, `${detail}.`);
  },
};
