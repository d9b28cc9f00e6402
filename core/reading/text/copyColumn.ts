// One column out of a stage of rows into its own array, with what has to be known of every value and would cost another
// walk through memory later: range, missing values, extremes of blocks. One function for each kind of array, so that the
// compiler need not tell them apart.

import { BLOCK, type BlockExtremes } from '../../capture/blockExtremes.ts';

/** Where the values of a column lie on a stage: from `first` on, `stride` apart, `rows` of them. */
export interface OnStage {
  readonly stage: Float64Array;
  readonly first: number;
  readonly stride: number;
  readonly rows: number;
}

/** Count and range of the finite values of a column. */
export interface ColumnRange {
  finite: number;
  min: number;
  max: number;
}

/** Copies to `target` from `at` on, rounded to 4 bytes. Widens blocks and min and max of `range`; returns the finite values. */
export function copyNarrow(
  { stage, first, stride, rows }: OnStage,
  target: Float32Array,
  at: number,
  { low, high }: BlockExtremes,
  range: ColumnRange,
): number {
  let { min, max } = range;
  // | 0 tells the compiler that these are whole numbers and stay so.
  let finite = rows | 0;
  const step = stride | 0;
  const end = (at + rows) | 0;
  let i = first | 0;
  // Math.min tells a missing value only by spoiling the block, and is a third quicker (measured) than to look at each.
  let gaps = false;
  for (let k = at | 0; k < end; ) {
    const block = Math.floor(k / BLOCK);
    const blockEnd = Math.min(end, (block + 1) * BLOCK) | 0;
    const begin = k;
    const from = i;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    if (!gaps) {
      for (; k < blockEnd; k = (k + 1) | 0, i = (i + step) | 0) {
        const value = stage[i] ?? Number.NaN;
        target[k] = value;
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
      gaps = Number.isNaN(least);
    }
    if (gaps) {
      const before = finite;
      least = Number.POSITIVE_INFINITY;
      most = Number.NEGATIVE_INFINITY;
      for (k = begin, i = from; k < blockEnd; k = (k + 1) | 0, i = (i + step) | 0) {
        const value = stage[i] ?? Number.NaN;
        target[k] = value;
        if (value < least) least = value;
        if (value > most) most = value;
        if (Number.isNaN(value)) finite = (finite - 1) | 0;
      }
      gaps = finite < before;
    }
    if (least < min) min = least;
    if (most > max) max = most;
    if (least < (low[block] ?? 0)) low[block] = least;
    if (most > (high[block] ?? 0)) high[block] = most;
  }
  range.min = min;
  range.max = max;
  return finite;
}

/** As copyNarrow, without rounding. */
export function copyWide(
  { stage, first, stride, rows }: OnStage,
  target: Float64Array,
  at: number,
  { low, high }: BlockExtremes,
  range: ColumnRange,
): number {
  let finite = 0;
  for (let k = at, i = first, end = at + rows; k < end; k++, i += stride) {
    const value = stage[i] ?? Number.NaN;
    target[k] = value;
    if (Number.isNaN(value)) continue;
    finite++;
    const block = Math.floor(k / BLOCK);
    if (value < range.min) range.min = value;
    if (value > range.max) range.max = value;
    if (value < (low[block] ?? 0)) low[block] = value;
    if (value > (high[block] ?? 0)) high[block] = value;
  }
  return finite;
}
