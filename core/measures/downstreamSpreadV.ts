import { moments } from '../statistics/moments.ts';
import { blockInterval, sumOver } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearBlocks } from './sensorBlocks.ts';
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
    if (!sensor) return missing(this.id, why);
    const blocks = rearBlocks(data);
    const interval = blocks
      ? blockInterval(data, (t) => Math.sqrt(sumOver(t, blocks.squares) / sumOver(t, blocks.count)))
      : null;
    return measured(this.id, moments(sensor.series.values).deviation, interval);
  },
};
