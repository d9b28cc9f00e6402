import { frontVoltage, rearVoltage } from '../measures/sensors.ts';
import { slowAndFast } from '../measures/slowAndFast.ts';
import { round } from '../words/numbers.ts';
import type { Condition } from './condition.ts';
import { met, notMet, notRecorded } from './conditionResult.ts';

/** A rear sensor that swings this much more than the front one is probably the front one. */
const LARGER = 1.6;
const LEAST_REAR_V = 0.3;

export const sensorsInPlace: Condition = {
  id: 'sensorsInPlace',
  words: 'Sensors not exchanged',
  help: 'Behind a converter a wave can only become smaller and later. A rear trace that swings more than the front one, or ahead of it, means exchanged connectors, channels or leads.',
  blocker: 'sensorsExchanged',
  kinds: ['hold', 'cruise', 'mixed'],
  judge(context) {
    const code = context.troubleCodes.find((one) => one === 'P0040' || one === 'P0041');
    if (code) return notMet(this.id, `Trouble code ${code}: sensor signals exchanged between banks.`);
    const front = frontVoltage(context).sensor;
    const rear = rearVoltage(context).sensor;
    if (!front || !rear) return notRecorded(this.id, 'It takes both sensors as voltages to tell.');
    const ahead = slowAndFast(front).fast;
    const behind = slowAndFast(rear).fast;
    const aheadV = ahead.high - ahead.low;
    const behindV = behind.high - behind.low;
    const detail = `Fast swing ${round(aheadV, 2)} V in front, ${round(behindV, 2)} V behind`;
    if (behindV > LEAST_REAR_V && behindV > LARGER * aheadV)
      return notMet(this.id, `${detail}: the rear trace swings more than the front one.`);
    const lag = context.measures.get('lagS')?.value;
    if (lag != null && lag < -0.03)
      return notMet(this.id, `The rear trace runs ${round(-lag, 2)} s ahead of the front one.`);
    return met(this.id, `${detail}.`);
  },
};
