import type { Capture } from '../capture/capture.ts';
import { CAPACITY_GRID_G } from './capacityGrid.ts';
import { bankSize } from './engineSize.ts';
import type { CapacityProfile, CapacitySaid } from './fit.ts';
import { AIR_OXYGEN_MASS_SHARE } from './oxygenFlow.ts';
import { estimateFrom, widened } from './profile.ts';

/** What a profile says of a converter, in every measure of storage that is shown. */
export interface CapacityFacts {
  readonly said: CapacitySaid;
  /** Capacities at their best, a good converter's and a dead one's: grams of the model, for ghosts. */
  readonly bestG: number;
  readonly goodG: number;
  readonly deadG: number;
  /** Place of the best capacity in the grid. */
  readonly gridIndex: number;
}

/** From this much on for two litres a converter passes, and up to this much it does not store (classes.ts, from memory). */
export const GOOD_FROM_G = 0.28;
export const DEAD_UP_TO_G = 0.1;
/** What the ghost of a good converter holds, and the ghost of a dead one, g for two litres. */
const GHOST_GOOD_G = 0.9;
const GHOST_DEAD_G = 0.012;
const REFERENCE_LITRES = 2;
/** Deviation, in the logarithm, of the height of the swing by where it was taken from. */
const SWING_UNKNOWN = { lambda: 0.22, trims: 0.26, usual: 0.4 } as const;

/**
 * Deviation, in the logarithm, of what the model leaves out: no converter is a row of alike cells, and each ages
 * in its own way. Chosen on simulated cars of the calibration's seeds, drawn inside its ranges and half outside them, so
 * that the 95 % interval holds the truth in 90 to 99 of 100 of either.
 */
const MODEL_UNKNOWN = 0.5;

/** Where a window's swing and air stand. */
export type SwingAndAir = Pick<CapacitySaid, 'airGS' | 'airRecorded' | 'swing' | 'swingFrom'>;

/** What a profile of one window, or of several together, says of the converter behind that bank of the capture. */
export function capacityFacts(capture: Capture, of: SwingAndAir, profile: CapacityProfile): CapacityFacts {
  const unknown = Math.hypot(SWING_UNKNOWN[of.swingFrom], MODEL_UNKNOWN);
  const { capacityG: bestG, interval } = estimateFrom(profile, unknown);
  const likelihood = widened(profile, unknown);
  const scale = REFERENCE_LITRES / bankSize(capture).litres;
  const perSecond = AIR_OXYGEN_MASS_SHARE * of.airGS * of.swing;
  const [low, high] = interval;
  const scaled = (by: number) => [low === null ? null : low * by, high === null ? null : high * by] as const;
  return {
    said: {
      capacityS: bestG / perSecond,
      intervalS: scaled(1 / perSecond),
      capacityG: of.airRecorded ? bestG : null,
      intervalG: of.airRecorded ? interval : null,
      capacityFor2L: bestG * scale,
      intervalFor2L: scaled(scale),
      bound: low === null ? (high === null ? 'none' : 'upperOnly') : high === null ? 'lowerOnly' : 'both',
      airGS: of.airGS,
      swing: of.swing,
      swingFrom: of.swingFrom,
      airRecorded: of.airRecorded,
      profile,
      logLikelihoodGood: averaged(likelihood, GOOD_FROM_G / scale, Number.POSITIVE_INFINITY),
      logLikelihoodDead: averaged(likelihood, 0, DEAD_UP_TO_G / scale),
    },
    bestG,
    goodG: GHOST_GOOD_G / scale,
    deadG: GHOST_DEAD_G / scale,
    gridIndex: nearest(bestG),
  };
}

/** Logarithm of the mean likelihood over the capacities between two limits, relative to the best capacity. */
function averaged(likelihood: Float64Array, fromG: number, toG: number): number {
  let sum = 0;
  let count = 0;
  CAPACITY_GRID_G.forEach((grams, i) => {
    if (grams < fromG || grams > toG) return;
    sum += likelihood[i] ?? 0;
    count++;
  });
  const best = likelihood.reduce((high, value) => Math.max(high, value), 0);
  return Math.log(Math.max(1e-12, sum / Math.max(1, count) / best));
}

function nearest(grams: number): number {
  let best = 0;
  CAPACITY_GRID_G.forEach((one, i) => {
    if (Math.abs(Math.log(one / grams)) < Math.abs(Math.log((CAPACITY_GRID_G[best] ?? one) / grams))) best = i;
  });
  return best;
}
