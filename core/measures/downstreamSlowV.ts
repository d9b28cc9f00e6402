import { blockInterval } from './blocks.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { rearBlocks } from './sensorBlocks.ts';
import { rearVoltage } from './sensors.ts';
import { slowAndFast, swingOf } from './slowAndFast.ts';

/** Swing of the rear sensor's slow part, without its outermost 5 % at either end. */
export const downstreamSlowV: Measure = {
  id: 'downstreamSlowV',
  words: 'Slow swing, rear',
  unit: 'V',
  digits: 2,
  needs: 'The rear sensor. Survives slow instruments.',
  help: 'Wander of the mixture behind the converter over more than five seconds: trims and drift, no fault of the converter.',
  compute(data) {
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const part = rearBlocks(data)?.slow;
    const interval = part ? blockInterval(data, (t) => part.quantile(t, 0.95) - part.quantile(t, 0.05)) : null;
    return measured(this.id, swingOf(slowAndFast(sensor).slow), interval);
  },
};
