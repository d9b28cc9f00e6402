import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rangeOf, rearVoltage } from './sensors.ts';

/** A front sensor that moves less than this has no swing to compare with. */
export const LEAST_FRONT_SWING_V = 0.1;

/** Swing of the rear sensor over swing of the front one, each without its outermost 5 % at either end (check 3.02). */
export const amplitudeRatio: Measure = {
  id: 'amplitudeRatio',
  words: 'Swing, rear over front',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages. Survives slow instruments, since it does not count.',
  help: 'How far the rear sensor swings compared with the front one, slow wander included.',
  compute(data) {
    const front = frontVoltage(data);
    const rear = rearVoltage(data);
    if (!front.sensor) return missing(this.id, front.why);
    if (!rear.sensor) return missing(this.id, rear.why);
    const ahead = rangeOf(front.sensor);
    const behind = rangeOf(rear.sensor);
    if (ahead.high - ahead.low < LEAST_FRONT_SWING_V)
      return missing(this.id, 'The front sensor does not swing in this window.');
    return measured(this.id, (behind.high - behind.low) / (ahead.high - ahead.low));
  },
};
