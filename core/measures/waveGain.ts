import { transferOver } from '../signal/transferAt.ts';
import { percentileInterval } from '../statistics/bootstrap.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { wavesOf } from './waves.ts';

/** Amplitude of the rear sensor that goes with the front one, over the front one's, at the switching frequency. */
export const waveGain: Measure = {
  id: 'waveGain',
  words: 'Gain at the switching frequency',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages, two values a cycle at least, eighteen front cycles.',
  help: 'The part of the rear movement that follows the front sensor, as a share of it. Noise and wander do not count.',
  compute(data) {
    const waves = wavesOf(data);
    if (typeof waves === 'string') return missing(this.id, waves);
    const { segments, hz, transfer, resamples } = waves;
    const interval = percentileInterval(resamples, (t) => transferOver(segments, hz, t)?.gain ?? Number.NaN);
    return measured(this.id, transfer.gain, interval);
  },
};
