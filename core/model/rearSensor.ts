import type { Seconds } from '../units/quantities.ts';

/** A rising voltage lags 0.7 of what a falling one does: lean to rich is quicker (checks 4.30, 4.31). */
const RISE_SHARE = 0.7;

/** What a sensor of first order with the time constant `lagS` (falling) shows of `gasV`, at each step. Same length. */
export function laggedVoltage(gasV: Float64Array, lagS: Seconds, stepS: Seconds): Float64Array {
  const out = new Float64Array(gasV.length);
  const fall = 1 - Math.exp(-stepS / lagS);
  const rise = 1 - Math.exp(-stepS / (lagS * RISE_SHARE));
  let shown = gasV[0] ?? 0;
  for (let k = 0; k < gasV.length; k++) {
    const goal = gasV[k] ?? shown;
    shown += (goal - shown) * (goal < shown ? fall : rise);
    out[k] = shown;
  }
  return out;
}
