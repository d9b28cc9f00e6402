import type { Hertz, Seconds } from '../units/quantities.ts';
import type { Bank, Role } from './roles.ts';
import type { TimeBase } from './timeBase.ts';

/**
 * One recorded quantity. `values` holds one number a sample of `time`, in `unit`; NaN where the file had no usable
 * value at that moment. Values are 4 bytes wide where the instrument's resolution allows it.
 */
export interface Channel {
  /** Stable within the capture and across reads of the same bytes: "c0", "c1", ... in the order of the file. */
  readonly id: string;
  /** As the file names it, trimmed; may hold anything a stranger typed. */
  readonly name: string;
  readonly role: Role;
  readonly bank: Bank;
  /** Sensor number along the exhaust (1 upstream, 2 downstream, 3 behind a second brick), or null. */
  readonly sensor: number | null;
  /** Unit of `values`: the role's unit, or for role 'other' the file's own. */
  readonly unit: string;
  /** Unit as the file gave it, or null where it gave none. */
  readonly fileUnit: string | null;
  readonly time: TimeBase;
  readonly values: Float32Array | Float64Array;
  /** Facts found while reading, over finite samples. */
  readonly facts: ChannelFacts;
}

/** What reading measured about a channel. All numbers are finite; counts are of samples. */
export interface ChannelFacts {
  /** Samples with a finite value. */
  readonly finite: number;
  readonly min: number;
  readonly max: number;
  /** One over the median interval between samples; 0 for fewer than two samples. */
  readonly medianRateHz: Hertz;
  /** Half the range between the 5th and 95th percentile of the intervals, s. */
  readonly jitterS: Seconds;
  /**
   * Rate at which the value is renewed: less than medianRateHz where an instrument repeats the last value until a new
   * one arrives. Equal to it for a channel that never holds. 0 for a channel that never changes.
   */
  readonly renewalRateHz: Hertz;
  /** Smallest step between two different values, in `unit`; 0 for a channel that never changes. */
  readonly resolution: number;
}
