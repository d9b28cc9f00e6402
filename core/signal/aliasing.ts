import type { Hertz, RevolutionsPerMinute } from '../units/quantities.ts';

/**
 * Where a tone of `toneHz` appears when it is sampled `rateHz` times a second: |f - fs * round(f / fs)|, which is f
 * itself below half the rate (Numerical Recipes in C, 13.8; check 6.01). A rate of 0 or below gives NaN.
 */
export function apparentFrequency(toneHz: Hertz, rateHz: Hertz): Hertz {
  if (!(rateHz > 0)) return Number.NaN;
  return Math.abs(toneHz - rateHz * Math.round(toneHz / rateHz));
}

/**
 * The fastest a switching fuel control can swing at an engine speed. An integrating control behind a pure delay swings
 * with a period of four delays; the delay is never less than one working cycle (two turns, from injection to exhaust)
 * and some 40 ms of gas on its way and sensor (from memory, order of magnitude). 2250 1/min: 2.7 Hz, which is the upper
 * end of what is printed for the limit cycle (check 3.35). Without an engine speed, or one under 500 1/min, 3 Hz is taken.
 */
export function fastestSwitching(rpm: RevolutionsPerMinute | null): Hertz {
  if (rpm === null || !(rpm >= 500)) return 3;
  return 1 / (4 * (120 / rpm + 0.04));
}
