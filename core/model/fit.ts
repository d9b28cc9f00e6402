import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Bank } from '../capture/roles.ts';
import type { Series } from '../capture/series.ts';
import type { Grams, GramsPerSecond, Seconds, Share, Volts } from '../units/quantities.ts';
import type { CaptureWindow } from '../windows/window.ts';

/** What a fit looks at. A window's data of core/measures is one of these. */
export interface FitData {
  readonly capture: Capture;
  readonly window: CaptureWindow;
  readonly bank: Bank;
  readonly upstream: { readonly channel: Channel; readonly series: Series } | null;
  readonly downstream: { readonly channel: Channel; readonly series: Series } | null;
}

/**
 * Likelihood of every capacity, the other unknowns summed over: what several windows of one converter are
 * combined by (add the logarithms). Same length; grams ascend evenly in the logarithm.
 */
export interface CapacityProfile {
  readonly capacityG: Float64Array;
  /** Natural logarithm, 0 at its highest; already scaled to the number of independent samples. */
  readonly logLikelihood: Float64Array;
}

/** What the window draws over the rear trace so that a person sees why. Same length; volts; times in capture seconds. */
export interface GhostTraces {
  readonly timesS: Float64Array;
  /** The rear sensor as this fit has it. */
  readonly fitted: Float64Array;
  /** Behind a good converter, under the same front signal. */
  readonly good: Float64Array;
  /** Behind one that stores nothing. */
  readonly dead: Float64Array;
}

/** What is said of a converter's storage, in every measure that is shown. All numbers finite. */
export interface CapacitySaid {
  /**
   * Storage in seconds: how long a swing of this window's own height, at its own air flow, takes to fill it.
   * What can be had without any air flow.
   */
  readonly capacityS: Seconds;
  /** Lowest and highest of the 95 % likelihood interval; null at an end that is left open. */
  readonly intervalS: readonly [Seconds | null, Seconds | null];
  /** The same in grams; null where no air flow was recorded. */
  readonly capacityG: Grams | null;
  readonly intervalG: readonly [Grams | null, Grams | null] | null;
  /**
   * The capacity as it would be for a two-litre engine (of one bank), so that converters of all engines compare: by this
   * the classes of the calibration are said. And the 95 % interval, null at an open end.
   */
  readonly capacityFor2L: Grams;
  readonly intervalFor2L: readonly [Grams | null, Grams | null];
  /**
   * 'both' ends known; 'lowerOnly': the rear trace stayed so calm that any larger capacity explains it as well;
   * 'upperOnly': it followed so closely that any smaller one does; 'none': nothing is said about it.
   */
  readonly bound: 'both' | 'lowerOnly' | 'upperOnly' | 'none';
  /** Mean air flow through this bank, g/s: recorded, or what a two-litre engine would take. */
  readonly airGS: GramsPerSecond;
  readonly airRecorded: boolean;
  /** Half height of the swing in excess oxygen (1 - 1/lambda) ahead of the converter, and where it was taken from. */
  readonly swing: number;
  readonly swingFrom: 'lambda' | 'trims' | 'usual';
  readonly profile: CapacityProfile;
  /**
   * Natural logarithm of the likelihood that the converter is a good one (0.28 g and more for two litres) or a dead one
   * (0.1 g and less), each averaged over its capacities and relative to the best capacity: 0 or below.
   * What no window can tell, as the height of the swing behind a switching sensor, is allowed for as in the interval.
   */
  readonly logLikelihoodGood: number;
  readonly logLikelihoodDead: number;
}

/** The best description of a converter that a window allows. */
export interface ConverterFit extends CapacitySaid {
  /**
   * 'tracked': the front signal was sampled fast enough to be followed through the converter, wave by wave.
   * 'spread': it was not; only how far the rear trace moves from value to value was compared.
   */
  readonly basis: 'tracked' | 'spread';
  /** Lag of the rear sensor (time constant) and delay of the gas on its way. */
  readonly lagS: Seconds;
  readonly delayS: Seconds;
  /** Mean of recorded minus fitted rear voltage. */
  readonly offsetV: Volts;
  /** Share of the rear trace's variance that the fit explains; may be negative for a bad fit. */
  readonly explained: Share;
  /** Logarithm of likelihood over rate, capacity, lag and delay; what windows of one capture are combined by. */
  readonly table: Float64Array;
  /** Front swings in what was compared, and whether it was a fuel cut. */
  readonly cycles: number;
  readonly kind: 'steady' | 'airPull';
  /** Null for a fit by spread. */
  readonly ghosts: GhostTraces | null;
}

/** What a whole capture says of one converter: its steady windows and its fuel cuts together. */
export interface CaptureFit extends CapacitySaid {
  /** How many steady windows and fuel cuts it rests on. */
  readonly steady: number;
  readonly airPulls: number;
}

/** A fit, or the sentence that says why there is none. */
export type FitOutcome =
  | { readonly fit: ConverterFit; readonly missing: null }
  | { readonly fit: null; readonly missing: string };
