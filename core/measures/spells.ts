import { type Band, hysteresisCrossings } from '../signal/crossings.ts';
import { remember } from '../signal/remember.ts';
import { slidingMean } from '../signal/slidingMean.ts';
import { thinned } from '../signal/thinned.ts';
import type { Hertz, Seconds } from '../units/quantities.ts';
import type { SensorSeries } from './measure.ts';

/** A stretch in which a trace stayed on one side of its switch point. */
export interface Spell {
  readonly fromS: Seconds;
  readonly lengthS: Seconds;
}

/** The rich and the lean spells of a trace, in order; the ones that the window cuts are left out. */
export interface Spells {
  readonly rich: readonly Spell[];
  readonly lean: readonly Spell[];
}

/** Narrower than the band of counting, so that a short dip that turns half way is seen; wider than the noise. */
const BAND: Band = { low: 0.35, high: 0.55 };
/** An engine cycle, two turns at 2000 1/min: averaged over one, cylinders that differ from each other leave no ripple. */
const CYCLE_S: Seconds = 0.06;
const MOST_HZ: Hertz = 100;

/** Rich and lean spells of a switching sensor about its switch point of 0.45 V (check 4.10). */
export const spellsOf = remember(({ series }: SensorSeries): Spells => {
  const thin = thinned(series, MOST_HZ);
  const switches = hysteresisCrossings({ timesS: thin.timesS, values: slidingMean(thin, CYCLE_S) }, BAND);
  const spells = (rising: boolean): Spell[] =>
    switches.flatMap(({ timeS, rising: rises }, i) => {
      const next = switches[i + 1];
      return next && rises === rising ? [{ fromS: timeS, lengthS: next.timeS - timeS }] : [];
    });
  return { rich: spells(true), lean: spells(false) };
});
