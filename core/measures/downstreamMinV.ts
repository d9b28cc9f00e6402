import { blockInterval } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearBlocks } from './sensorBlocks.ts';
import { rangeOf, rearVoltage } from './sensors.ts';

/** Robust minimum of the rear sensor: its 5th percentile. */
export const downstreamMinV: Measure = {
  id: 'downstreamMinV',
  words: 'Lowest, rear',
  unit: 'V',
  digits: 2,
  needs: 'The rear sensor. Survives slow instruments.',
  help: 'Together with the highest it tells how far the rear sensor moved.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const values = rearBlocks(data)?.all;
    const interval = values ? blockInterval(data, (times) => values.quantile(times, 0.05)) : null;
    return measured(this.id, rangeOf(sensor).low, interval);
  },
};
