import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rangeOf, rearVoltage } from './sensors.ts';

/** Robust minimum of the rear sensor: its 5th percentile. */
export const downstreamMinV: Measure = {
  id: 'downstreamMinV',
  words: 'Lowest, rear',
  unit: 'V',
  digits: 2,
  needs: 'The rear sensor.',
  help: 'Together with the highest it tells how far the rear sensor moved.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    return sensor ? measured(this.id, rangeOf(sensor).low) : missing(this.id, why);
  },
};
