import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rangeOf, rearVoltage } from './sensors.ts';

/** Robust maximum of the rear sensor: its 95th percentile. */
export const downstreamMaxV: Measure = {
  id: 'downstreamMaxV',
  words: 'Highest, rear',
  unit: 'V',
  digits: 2,
  needs: 'The rear sensor.',
  help: 'Together with the lowest it tells how far the rear sensor moved.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    return sensor ? measured(this.id, rangeOf(sensor).high) : missing(this.id, why);
  },
};
