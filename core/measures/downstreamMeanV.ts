import { moments } from '../statistics/moments.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearVoltage } from './sensors.ts';

/** Mean of the rear sensor. */
export const downstreamMeanV: Measure = {
  id: 'downstreamMeanV',
  words: 'Mean, rear',
  unit: 'V',
  digits: 2,
  needs: 'The rear sensor.',
  help: 'The level tells the mixture behind the converter, not the converter: 0.2 V and 0.7 V are both printed for good ones.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    return sensor ? measured(this.id, moments(sensor.series.values).mean) : missing(this.id, why);
  },
};
