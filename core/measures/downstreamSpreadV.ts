import { moments } from '../statistics/moments.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearVoltage } from './sensors.ts';

/** Standard deviation of the rear sensor, slow wander included. */
export const downstreamSpreadV: Measure = {
  id: 'downstreamSpreadV',
  words: 'Spread, rear',
  unit: 'V',
  digits: 3,
  needs: 'The rear sensor. Survives slow instruments.',
  help: 'Standard deviation of the rear voltage over the window.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    return sensor ? measured(this.id, moments(sensor.series.values).deviation) : missing(this.id, why);
  },
};
