import type { Volts } from '../units/quantities.ts';
import { excessOxygen } from './oxygenFlow.ts';
import type { Plateaus } from './swing.ts';

/** Volts for a factor e in oxygen or in carbon monoxide: RT/4F and RT/2F at about 680 °C (Nernst, check 4.01). */
export const LEAN_FOLD_V: Volts = 0.0205;
export const RICH_FOLD_V: Volts = 0.041;
/** A running engine is neither leaner nor richer than this for long; beyond it the voltage says too little. */
const LEANEST = 0.05;
const RICHEST = -0.09;
/** A wideband sensor that shows more than this shows air. */
const AIR_FROM = 0.25;
/** Beyond a plateau by less than this a voltage still belongs to it: noise, and the end of an ordinary swing. */
const MARGIN_V: Volts = 0.03;

/**
 * Excess oxygen (1 - 1/lambda) of a running engine from a switching sensor's voltage. Such a sensor tells the side and
 * little more: between its plateaus the excess is taken to run straight from +half to -half; beyond them it follows the
 * Nernst equation, anchored at the plateaus, within limits. A fuel cut is not told by voltage alone: see airPulls.ts.
 */
export function oxygenFromVolts(volts: Volts, { leanV, richV }: Plateaus, half: number): number {
  const beyondRich = volts - richV - MARGIN_V;
  if (beyondRich > 0) return Math.min(-half, Math.max(RICHEST, -half * Math.exp(beyondRich / RICH_FOLD_V)));
  const beyondLean = leanV - MARGIN_V - volts;
  if (beyondLean > 0) return Math.max(half, Math.min(LEANEST, half * Math.exp(beyondLean / LEAN_FOLD_V)));
  return half * Math.max(-1, Math.min(1, 1 - (2 * (volts - leanV)) / (richV - leanV)));
}

/** Excess oxygen from a wideband sensor; a lambda near the end of its scale is air. */
export function oxygenFromLambda(lambda: number): number {
  const excess = excessOxygen(lambda);
  return excess > AIR_FROM ? 1 : excess;
}
