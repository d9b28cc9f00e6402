import type { Measure } from './measure.ts';
import { rearVoltage } from './sensors.ts';
import { switchHz } from './switching.ts';

/** Cycles a second of the rear sensor, counted as the front one's (check 6.07). */
export const downstreamSwitchHz: Measure = {
  id: 'downstreamSwitchHz',
  words: 'Switching frequency, rear',
  unit: 'Hz',
  digits: 2,
  needs: 'The rear sensor, at more than twice the fastest switching the engine speed allows.',
  help: 'How often a second the rear sensor crosses from lean to rich and back. Near 0 behind a converter that stores oxygen.',
  compute(data) {
    return switchHz(this.id, rearVoltage(data), data);
  },
};
