import type { Seconds } from '../units/quantities.ts';

/**
 * What is needed to draw one channel over a stretch, and nothing more. All arrays have the same length.
 * 'samples': each entry is a sample; low and high are equal. 'envelope': each entry is a bucket about one pixel wide at
 * its middle time, with the lowest and highest sample in it, so that no peak is ever lost. Entries without samples are
 * left out; a gap longer than `gapS` between two entries is drawn as a gap.
 */
export interface TraceView {
  readonly channelId: string;
  readonly kind: 'samples' | 'envelope';
  readonly startS: Seconds;
  readonly endS: Seconds;
  readonly timesS: Float64Array;
  readonly low: Float32Array;
  readonly high: Float32Array;
  /** Draw as steps: the instrument holds each value until the next. */
  readonly steps: boolean;
  readonly gapS: Seconds;
}

/** A channel's value at the cursor: the last sample at or before it, with the sample's own time. */
export interface CursorValue {
  readonly channelId: string;
  readonly sampleS: Seconds | null;
  readonly value: number | null;
}
