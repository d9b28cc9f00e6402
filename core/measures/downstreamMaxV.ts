import { blockInterval } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearBlocks } from './sensorBlocks.ts';
import { rangeOf, rearVoltage } from './sensors.ts';

/** Robust maximum of the rear sensor: its 95th percentile. */
export const downstreamMaxV: Measure = {
  id: 'downstreamMaxV',
  words: 'Highest, rear',
  unit: 'V',
  digits: 2,
  needs: 'The rear sensor. Survives slow instruments.',
  help: 'Together with the lowest it tells how far the rear sensor moved.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const values = rearBlocks(data)?.all;
    const interval = values ? blockInterval(data, (times) => values.quantile(times, 0.95)) : null;
    return measured(this.id, rangeOf(sensor).high, interval);
  },
};
