import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rangeOf } from './sensors.ts';

/** Robust maximum of the front sensor: its 95th percentile. */
export const upstreamMaxV: Measure = {
  id: 'upstreamMaxV',
  words: 'Highest, front',
  unit: 'V',
  digits: 2,
  needs: 'The front sensor as a voltage.',
  help: '0.65 to 0.85 V or more on a sound, hot sensor under closed loop.',
  compute(data) {
    const { sensor, why } = frontVoltage(data);
    return sensor ? measured(this.id, rangeOf(sensor).high) : missing(this.id, why);
  },
};
