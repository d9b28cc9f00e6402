import { blockInterval } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontBlocks } from './sensorBlocks.ts';
import { frontVoltage, rangeOf } from './sensors.ts';

/** Robust minimum of the front sensor: its 5th percentile. */
export const upstreamMinV: Measure = {
  id: 'upstreamMinV',
  words: 'Lowest, front',
  unit: 'V',
  digits: 2,
  needs: 'The front sensor as a voltage. Survives slow instruments.',
  help: '0.2 V or less on a sound, hot sensor under closed loop.',
  compute(data) {
    const { sensor, why } = frontVoltage(data);
    if (!sensor) return missing(this.id, why);
    const values = frontBlocks(data)?.all;
    const interval = values ? blockInterval(data, (times) => values.quantile(times, 0.05)) : null;
    return measured(this.id, rangeOf(sensor).low, interval);
  },
};
