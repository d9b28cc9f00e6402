import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage } from './sensors.ts';

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
    let rich = 0;
    for (const value of sensor.series.values) if (value > 0.45) rich++;
    return measured(this.id, rich / sensor.series.values.length);
  },
};
