import type { Interval } from '../statistics/exactIntervals.ts';
import type { CaptureWindow } from '../windows/window.ts';

/** Something that was not alike between two windows, and so weakens the comparison. */
export interface Unlike {
  readonly id: string;
  /** Part of a sentence: "engine speed: 2310 against 1480 1/min". */
  readonly words: string;
}

/** One measure of both windows, side by side. A side is null where the measure is. */
export interface MeasurePair {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  readonly digits: number;
  readonly first: number | null;
  readonly second: number | null;
  /** second minus first, or null where a side is missing. */
  readonly difference: number | null;
  /**
   * Its 95 % interval, low then high: what the scatter within each window leaves open. Null where a side has none, or
   * where the windows share a stretch of one capture and so are not independent.
   */
  readonly interval: Interval | null;
}

/** A window of one capture over a window of another, or of the same. */
export interface Comparison {
  readonly first: CaptureWindow;
  readonly second: CaptureWindow;
  /** The first thing a person reads: what was not alike, or that nothing was. */
  readonly sentence: string;
  readonly unlike: readonly Unlike[];
  readonly pairs: readonly MeasurePair[];
}
