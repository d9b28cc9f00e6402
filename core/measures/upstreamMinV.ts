import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rangeOf } from './sensors.ts';

/** Robust minimum of the front sensor: its 5th percentile. */
export const upstreamMinV: Measure = {
  id: 'upstreamMinV',
  words: 'Lowest, front',
  unit: 'V',
  digits: 2,
  needs: 'The front sensor as a voltage.',
  help: '0.2 V or less on a sound, hot sensor under closed loop.',
  compute(data) {
    const { sensor, why } = frontVoltage(data);
    return sensor ? measured(this.id, rangeOf(sensor).low) : missing(this.id, why);
  },
};
