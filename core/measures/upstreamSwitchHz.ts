import type { Measure } from './measure.ts';
import { frontVoltage } from './sensors.ts';
import { switchHz } from './switching.ts';

/**
 * Cycles a second of the front sensor: crossings of the 0.30/0.60 V band over twice the time (check 6.07). The interval
 * is Garwood's for the count, which is wider than a regular switching deserves and so on the safe side (check 6.13).
 */
export const upstreamSwitchHz: Measure = {
  id: 'upstreamSwitchHz',
  words: 'Switching frequency, front',
  unit: 'Hz',
  digits: 2,
  needs: 'The front sensor as a switching voltage, at more than twice the fastest switching the engine speed allows.',
  help: 'How often a second the front sensor goes once from lean to rich and back. At least 0.8 Hz is usual when held at 2000 to 2500 1/min.',
  compute(data) {
    return switchHz(this.id, frontVoltage(data), data);
  },
};
