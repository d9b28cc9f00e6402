import { banksOf, type Capture } from '../capture/capture.ts';
import { remember } from '../signal/remember.ts';
import { median } from '../statistics/quantile.ts';
import { engineTrack } from '../windows/engineTrack.ts';

/** Displacement behind one bank, and whether it was worked out from the capture or is the usual one. */
export interface BankSize {
  readonly litres: number;
  readonly from: 'air' | 'usual';
}

const USUAL_LITRES = 2;
/** Intake air at 25 °C and 101.325 kPa, g/L (checks 3.20, 4.01). */
const AIR_DENSITY = 1.184;
/** Load of an unloaded engine between 1700 and 3000 1/min, per cent, where none was recorded (common practice, no source). */
const UNLOADED = 22;
/** Steps of the engine track with a size each, below which their middle is left to chance (common practice, no source). */
const LEAST_STEPS = 20;

/**
 * Litres of engine behind one bank, so that a storage can be set against what belongs to an engine of that size. From
 * air = litres * rpm / 120 * density * load (g/s; a four-stroke engine fills once in two turns) where air and load were recorded; where only air was, from the standing car.
 * Two litres for the whole engine where there is no air flow: capacities are then worked out for two litres anyway.
 */
export const bankSize = remember((capture: Capture): BankSize => {
  const banks = Math.max(1, banksOf(capture).length);
  const { maf, rpm, load, speed } = engineTrack(capture).of;
  const found: number[] = [];
  if (maf && rpm)
    for (let k = 0; k < maf.length; k++) {
      const turning = rpm[k] ?? Number.NaN;
      const air = maf[k] ?? Number.NaN;
      const standing = !((speed?.[k] ?? 0) > 5) && turning > 1700 && turning < 3000;
      const share = load ? (load[k] ?? Number.NaN) : standing ? UNLOADED : Number.NaN;
      if (turning > 600 && air > 0.5 && share > 10) found.push((12_000 * air) / (turning * AIR_DENSITY * share));
    }
  if (found.length < LEAST_STEPS) return { litres: USUAL_LITRES / banks, from: 'usual' };
  return { litres: Math.min(8, Math.max(0.6, median(found))) / banks, from: 'air' };
});
