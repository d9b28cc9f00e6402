import { blockInterval, sumOver } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontBlocks } from './sensorBlocks.ts';
import { frontVoltage, richShare } from './sensors.ts';

/** Share of the front sensor's values above 0.45 V. */
export const upstreamRichShare: Measure = {
  id: 'upstreamRichShare',
  words: 'Share of time rich, front',
  unit: '1',
  digits: 2,
  needs: 'The front sensor as a voltage. Survives slow instruments.',
  help: 'Near one half under a sound closed loop. Far from it: mixture off, a leak, or a sensor that reads to one side.',
  compute(data) {
    const { sensor, why } = frontVoltage(data);
    if (!sensor) return missing(this.id, why);
    const blocks = frontBlocks(data);
    const interval = blocks ? blockInterval(data, (t) => sumOver(t, blocks.rich) / sumOver(t, blocks.count)) : null;
    return measured(this.id, richShare(sensor), interval);
  },
};
