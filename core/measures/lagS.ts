import { transferOver } from '../signal/transferAt.ts';
import { percentileInterval } from '../statistics/bootstrap.ts';
import { lagSearch } from './lagSearch.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { bothVoltages } from './sensors.ts';
import { whyNotCountable } from './switching.ts';
import { wavesOf } from './waves.ts';

/** A rear trace that is less alike than this does not follow the front one: then there is no lag to speak of. */
const LEAST_ALIKE = 0.4;
/** Chance of having taken a neighbouring period for the lag, above which none is given. */
const MOST_DOUBT = 0.01;

/**
 * Time by which the rear sensor runs behind the front one: the largest normalised cross-correlation of their fast parts
 * (check 6.05), its interval from the phase at the switching frequency. Null where the rear does not follow, and where
 * the control swings so evenly that a whole period more or less would fit as well.
 */
export const lagS: Measure = {
  id: 'lagS',
  words: 'Lag of the rear sensor',
  unit: 's',
  digits: 2,
  needs: 'Both sensors as voltages, fast enough to count, and a rear sensor that follows the front one.',
  help: 'A short lag behind a rear sensor that follows means little storage between the two.',
  compute(data) {
    const both = bothVoltages(data);
    if (both.why !== null) return missing(this.id, both.why);
    const not = whyNotCountable(both.front, data) ?? whyNotCountable(both.rear, data);
    if (not) return missing(this.id, not);
    const found = lagSearch(data);
    if (!found || found.alike < LEAST_ALIKE)
      return missing(this.id, 'The rear sensor does not follow the front one closely enough to have a lag.');
    if (found.doubt > MOST_DOUBT)
      return missing(this.id, 'The control swings so evenly that a lag one period longer or shorter fits as well.');
    const waves = wavesOf(data);
    if (typeof waves === 'string') return measured(this.id, found.lagS);
    const { segments, hz, transfer, resamples } = waves;
    const period = 1 / hz;
    const interval = percentileInterval(resamples, (t) => {
      const off = (transferOver(segments, hz, t)?.lagS ?? Number.NaN) - transfer.lagS;
      return found.lagS + off - period * Math.round(off / period);
    });
    return measured(this.id, found.lagS, interval);
  },
};
