import { LEAST_FRONT_SWING_V } from './amplitudeRatio.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rearVoltage } from './sensors.ts';
import { slowAndFast } from './slowAndFast.ts';

/** Swing of the rear sensor over swing of the front one when wander slower than 5 s is taken out of both (check 3.02). */
export const fastSwingRatio: Measure = {
  id: 'fastSwingRatio',
  words: 'Fast swing, rear over front',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages. Survives slow instruments.',
  help: 'As the swing ratio, but only what moves as fast as the fuel control: slow wander of the rear sensor is no fault.',
  compute(data) {
    const front = frontVoltage(data);
    const rear = rearVoltage(data);
    if (!front.sensor) return missing(this.id, front.why);
    if (!rear.sensor) return missing(this.id, rear.why);
    const ahead = slowAndFast(front.sensor).fast;
    const behind = slowAndFast(rear.sensor).fast;
    if (ahead.high - ahead.low < LEAST_FRONT_SWING_V)
      return missing(this.id, 'The front sensor does not swing in this window.');
    return measured(this.id, (behind.high - behind.low) / (ahead.high - ahead.low));
  },
};
