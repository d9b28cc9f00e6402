import { type Band, hysteresisCrossings } from '../signal/crossings.ts';
import { remember } from '../signal/remember.ts';
import type { Seconds } from '../units/quantities.ts';
import type { SensorSeries } from './measure.ts';

/** How long each rich and each lean spell of a trace lasted, in order; the ones that the window cuts are left out. */
export interface SpellLengths {
  readonly rich: readonly Seconds[];
  readonly lean: readonly Seconds[];
}

/** Narrower than the band of counting, so that a short dip that turns half way is seen; wider than the noise. */
const BAND: Band = { low: 0.35, high: 0.55 };

/** Lengths of the rich and lean spells of a switching sensor about its switch point of 0.45 V (check 4.10). */
export const spellLengths = remember(({ series }: SensorSeries): SpellLengths => {
  const switches = hysteresisCrossings(series, BAND);
  const lengths = (rising: boolean): Seconds[] =>
    switches.flatMap((one, i) => {
      const next = switches[i + 1];
      return next && one.rising === rising ? [next.timeS - one.timeS] : [];
    });
  return { rich: lengths(true), lean: lengths(false) };
});
