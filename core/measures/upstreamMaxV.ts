import { blockInterval } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontBlocks } from './sensorBlocks.ts';
import { frontVoltage, rangeOf } from './sensors.ts';

/** Robust maximum of the front sensor: its 95th percentile. */
export const upstreamMaxV: Measure = {
  id: 'upstreamMaxV',
  words: 'Highest, front',
  unit: 'V',
  digits: 2,
  needs: 'The front sensor as a voltage. Survives slow instruments.',
  help: '0.65 to 0.85 V or more on a sound, hot sensor under closed loop.',
  compute(data) {
    const { sensor, why } = frontVoltage(data);
    if (!sensor) return missing(this.id, why);
    const values = frontBlocks(data)?.all;
    const interval = values ? blockInterval(data, (times) => values.quantile(times, 0.95)) : null;
    return measured(this.id, rangeOf(sensor).high, interval);
  },
};
