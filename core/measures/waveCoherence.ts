import { transferOver } from '../signal/transferAt.ts';
import { percentileInterval } from '../statistics/bootstrap.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { wavesOf } from './waves.ts';

/** Share of the rear sensor's power at the switching frequency that follows the front sensor (magnitude-squared). */
export const waveCoherence: Measure = {
  id: 'waveCoherence',
  words: 'Coherence at the switching frequency',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages, two values a cycle at least, eighteen front cycles.',
  help: 'Near 1: the rear sensor moves because the front one does. Near 0: it rests, or moves for a reason of its own.',
  compute(data) {
    const waves = wavesOf(data);
    if (typeof waves === 'string') return missing(this.id, waves);
    const { segments, hz, transfer, resamples } = waves;
    const interval = percentileInterval(resamples, (t) => transferOver(segments, hz, t)?.coherence ?? Number.NaN);
    return measured(this.id, transfer.coherence, interval);
  },
};
