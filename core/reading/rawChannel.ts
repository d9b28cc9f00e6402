import type { BlockExtremes } from '../capture/blockExtremes.ts';
import type { Range } from '../capture/channelFacts.ts';
import type { TimeBase } from '../capture/timeBase.ts';

/** A channel as it stands in the file: values in the file's unit, nothing decided about its role. */
export interface RawChannel {
  /** Column of the file, or place in the list of names of a long file; index of the choice of columns. */
  readonly index: number;
  readonly name: string;
  /** The whole heading as the file writes it, where there is one. */
  readonly heading?: string;
  readonly unit: string | null;
  readonly time: TimeBase;
  readonly values: Float32Array | Float64Array;
  /** Digits after the decimal sign by which 4-byte values are restored exactly; -1 for 8-byte values. */
  readonly decimals: number;
  /** Count and range of the finite values, where reading has counted them already. */
  readonly range?: Range;
  /** Extremes of blocks of `values`, where reading has found them already. */
  readonly blocks?: BlockExtremes;
}
