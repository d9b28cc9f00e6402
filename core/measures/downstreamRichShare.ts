import { blockInterval, sumOver } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearBlocks } from './sensorBlocks.ts';
import { rearVoltage, richShare } from './sensors.ts';

/** Share of the rear sensor's values above 0.45 V. */
export const downstreamRichShare: Measure = {
  id: 'downstreamRichShare',
  words: 'Share of time rich, rear',
  unit: '1',
  digits: 2,
  needs: 'The rear sensor. Survives slow instruments.',
  help: 'Tells the mixture behind the converter, not the converter.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const blocks = rearBlocks(data);
    const interval = blocks ? blockInterval(data, (t) => sumOver(t, blocks.rich) / sumOver(t, blocks.count)) : null;
    return measured(this.id, richShare(sensor), interval);
  },
};
