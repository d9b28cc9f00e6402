// Values of one column while a file is read: 4 bytes a value where the file's decimals allow it, else 8.
//
// When do 4 bytes do? A decimal number k / 10^d with |k| < 2^23 comes back exactly from its nearest 4-byte number: the
// error is at most 2^-24 of the number, which is less than half a unit of k. So Math.round(f * 10^d) / 10^d is the very
// number that Number() gives for the file's text, and nothing that the instrument wrote is lost. As soon as a longer
// number turns up, the column is widened, and what it held so far is restored that way.

const LIMIT = 2 ** 23;
const MOST_DECIMALS = 15;
const POWERS = Float64Array.from({ length: MOST_DECIMALS + 1 }, (_, d) => 10 ** d);

/** Count and range of the finite values of a column. */
export interface ColumnRange {
  finite: number;
  min: number;
  max: number;
}

/** A finished column. `decimals` is what restoreDecimal needs; -1 for 8-byte values, which need nothing. */
export interface StoredColumn {
  readonly values: Float32Array | Float64Array;
  readonly decimals: number;
  readonly range: ColumnRange;
}

export class ColumnStore {
  private narrow: Float32Array;
  private wide: Float64Array | null;
  private length = 0;
  private decimals = 0;
  private readonly range: ColumnRange = { finite: 0, min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY };

  /** `expected` values are made room for; more may come. `exact` keeps 8 bytes whatever the values are: times. */
  constructor(exact: boolean, expected = 0) {
    this.narrow = new Float32Array(exact ? 0 : expected);
    this.wide = exact ? new Float64Array(expected) : null;
  }

  /**
   * Takes `rows` values that lie `stride` apart in `stage`, from index `first` on. `decimals` is the most digits after
   * the decimal sign that any number of this stage was written with.
   */
  take(stage: Float64Array, first: number, stride: number, rows: number, decimals: number): void {
    if (this.wide === null) {
      if (this.length + rows > this.narrow.length) this.narrow = grown(this.narrow, this.length + rows);
      copyNarrow(stage, first, stride, rows, this.narrow, this.length, this.range);
      if (this.stillFits(stage, first, stride, rows, decimals)) {
        this.length += rows;
        return;
      }
      this.widen(rows);
    } else rangeOf(stage, first, stride, rows, this.range);
    const wide = this.wide ?? new Float64Array(0);
    if (this.length + rows > wide.length) this.wide = grownWide(wide, this.length + rows);
    copyWide(stage, first, stride, rows, this.wide ?? wide, this.length);
    this.length += rows;
  }

  /** Bytes that are taken, room for more counted in. */
  get bytes(): number {
    return this.narrow.byteLength + (this.wide?.byteLength ?? 0);
  }

  /** Whether 4 bytes still do for the whole column, this stage included; finds the column's own decimals if need be. */
  private stillFits(stage: Float64Array, first: number, stride: number, rows: number, decimals: number): boolean {
    const { min, max, finite } = this.range;
    if (finite === 0) return true;
    const largest = Math.max(Math.abs(min), Math.abs(max));
    if (largest * (POWERS[Math.max(decimals, this.decimals)] ?? Number.POSITIVE_INFINITY) < LIMIT) {
      this.decimals = Math.max(this.decimals, decimals);
      return true;
    }
    // Another column may have written the longer decimals.
    for (let d = this.decimals; d <= Math.min(decimals, MOST_DECIMALS); d++) {
      const power = POWERS[d] ?? Number.POSITIVE_INFINITY;
      if (largest * power >= LIMIT) return false;
      if (allHaveDecimals(stage, first, stride, rows, power)) {
        this.decimals = d;
        return true;
      }
    }
    return false;
  }

  private widen(rows: number): void {
    const wide = new Float64Array(Math.max(this.narrow.length, this.length + rows));
    for (let i = 0; i < this.length; i++) wide[i] = restoreDecimal(this.narrow[i] ?? Number.NaN, this.decimals);
    this.wide = wide;
    this.narrow = new Float32Array(0);
  }

  /** The column; the store is empty afterwards. */
  finish(): StoredColumn {
    const values = this.wide === null ? fitted(this.narrow, this.length) : fitted(this.wide, this.length);
    const decimals = this.wide === null ? this.decimals : -1;
    this.narrow = new Float32Array(0);
    this.wide = null;
    return { values, decimals, range: this.range };
  }
}

/** The number that the file's text meant, from its 4-byte form; see the top of this file. */
export function restoreDecimal(value: number, decimals: number): number {
  const power = POWERS[decimals] ?? 1;
  return Math.round(value * power) / power;
}

/** The used part of an array: a view where little is wasted, else a copy of its own. */
function fitted(values: Float32Array | Float64Array, length: number): Float32Array | Float64Array {
  return length * 1.1 + 1024 >= values.length ? values.subarray(0, length) : values.slice(0, length);
}

// The loops below are functions of their own, each for one kind of array, so that the compiler need not tell them apart.

function copyNarrow(
  stage: Float64Array,
  first: number,
  stride: number,
  rows: number,
  target: Float32Array,
  at: number,
  range: ColumnRange,
): void {
  let { min, max } = range;
  let sum = 0;
  const end = at + rows;
  for (let k = at, i = first; k < end; k++, i += stride) {
    const value = stage[i] ?? Number.NaN;
    target[k] = value;
    sum += value;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  range.min = min;
  range.max = max;
  range.finite += Number.isNaN(sum) ? countFinite(stage, first, stride, rows) : rows;
}

/** A missing value makes the sum of a stage missing, so they are counted only where there are some. */
function countFinite(stage: Float64Array, first: number, stride: number, rows: number): number {
  let finite = 0;
  for (let k = 0, i = first; k < rows; k++, i += stride) if (!Number.isNaN(stage[i] ?? Number.NaN)) finite++;
  return finite;
}

function rangeOf(stage: Float64Array, first: number, stride: number, rows: number, range: ColumnRange): void {
  let { min, max } = range;
  for (let k = 0, i = first; k < rows; k++, i += stride) {
    const value = stage[i] ?? Number.NaN;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  range.min = min;
  range.max = max;
  range.finite += countFinite(stage, first, stride, rows);
}

function copyWide(
  stage: Float64Array,
  first: number,
  stride: number,
  rows: number,
  target: Float64Array,
  at: number,
): void {
  const end = at + rows;
  for (let k = at, i = first; k < end; k++, i += stride) target[k] = stage[i] ?? Number.NaN;
}

function allHaveDecimals(stage: Float64Array, first: number, stride: number, rows: number, power: number): boolean {
  for (let k = 0, i = first; k < rows; k++, i += stride) {
    const value = stage[i] ?? Number.NaN;
    if (!Number.isNaN(value) && Math.round(value * power) / power !== value) return false;
  }
  return true;
}

function grown(values: Float32Array, least: number): Float32Array {
  const larger = new Float32Array(roomFor(values.length, least));
  larger.set(values);
  return larger;
}

function grownWide(values: Float64Array, least: number): Float64Array {
  const larger = new Float64Array(roomFor(values.length, least));
  larger.set(values);
  return larger;
}

/** A good half more than there was: with several columns, only one of them is copied at a time. */
function roomFor(length: number, least: number): number {
  return Math.max(least, Math.ceil(length * 1.6), 4096);
}
