import { moments } from '../statistics/moments.ts';
import { blockInterval, sumOver } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearBlocks } from './sensorBlocks.ts';
import { rearVoltage } from './sensors.ts';

/** Mean of the rear sensor. */
export const downstreamMeanV: Measure = {
  id: 'downstreamMeanV',
  words: 'Mean, rear',
  unit: 'V',
  digits: 2,
  needs: 'The rear sensor. Survives slow instruments.',
  help: 'The level tells the mixture behind the converter, not the converter: 0.2 V and 0.7 V are both printed for good ones.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const blocks = rearBlocks(data);
    const interval = blocks ? blockInterval(data, (t) => sumOver(t, blocks.sum) / sumOver(t, blocks.count)) : null;
    return measured(this.id, moments(sensor.series.values).mean, interval);
  },
};
