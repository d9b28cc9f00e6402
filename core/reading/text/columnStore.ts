// Values of one column while a file is read: blocks of a few thousand, 4 bytes a value where the file's decimals allow it.
//
// When do 4 bytes do? A decimal number k / 10^d with |k| < 2^23 comes back exactly from its nearest 4-byte number: the
// error is at most 2^-24 of the number, which is less than half a unit of k. So Math.round(f * 10^d) / 10^d is the very
// number that Number() gives for the file's text, and nothing that the instrument wrote is lost. Longer numbers get 8.

const LIMIT = 2 ** 23;
const MOST_DECIMALS = 15;
const POWERS = Float64Array.from({ length: MOST_DECIMALS + 1 }, (_, d) => 10 ** d);

interface Block {
  readonly values: Float32Array | Float64Array;
  readonly decimals: number;
}

export class ColumnStore {
  private blocks: Block[] = [];
  private length = 0;
  private usual = 0;
  finite = 0;
  min = Number.POSITIVE_INFINITY;
  max = Number.NEGATIVE_INFINITY;
  private readonly exact: boolean;

  /** `exact` keeps 8 bytes whatever the values are: times. */
  constructor(exact: boolean) {
    this.exact = exact;
  }

  /**
   * Takes `rows` values that lie `stride` apart in `stage`, from index `first` on. `decimals` is the most digits after
   * the decimal sign that any number of this stage was written with.
   */
  take(stage: Float64Array, first: number, stride: number, rows: number, decimals: number): void {
    const end = first + rows * stride;
    let { finite, min, max } = this;
    let largest = 0;
    for (let i = first; i < end; i += stride) {
      const value = stage[i] ?? Number.NaN;
      if (value < min) min = value;
      if (value > max) max = value;
      if (!Number.isNaN(value)) finite++;
      const size = value < 0 ? -value : value;
      if (size > largest) largest = size;
    }
    this.finite = finite;
    this.min = min;
    this.max = max;
    const fitting = this.exact ? -1 : this.fittingDecimals(stage, first, stride, end, largest, decimals);
    const values = fitting < 0 ? new Float64Array(rows) : new Float32Array(rows);
    for (let i = first, k = 0; k < rows; i += stride, k++) values[k] = stage[i] ?? Number.NaN;
    this.blocks.push({ values, decimals: fitting });
    this.length += rows;
  }

  /** Digits with which 4 bytes do for this stage, or -1 where 8 are needed. */
  private fittingDecimals(
    stage: Float64Array,
    first: number,
    stride: number,
    end: number,
    largest: number,
    decimals: number,
  ): number {
    if (decimals <= MOST_DECIMALS && largest * (POWERS[decimals] ?? Number.POSITIVE_INFINITY) < LIMIT) return decimals;
    // Another column may have the longer decimals: find this one's own.
    for (let d = this.usual; d <= Math.min(decimals, MOST_DECIMALS); d++) {
      const power = POWERS[d] ?? Number.POSITIVE_INFINITY;
      if (largest * power >= LIMIT) return -1;
      if (allHaveDecimals(stage, first, stride, end, power)) {
        this.usual = d;
        return d;
      }
    }
    return -1;
  }

  /** All values in one array, 4 bytes wide where every block is. The store is empty afterwards. */
  finish(): { readonly values: Float32Array | Float64Array; readonly decimals: number } {
    const narrow = this.blocks.every((block) => block.decimals >= 0);
    const decimals = this.blocks.reduce((most, block) => Math.max(most, block.decimals), 0);
    const size = Math.max(Math.abs(this.min), Math.abs(this.max));
    const shared = narrow && !(this.finite > 0 && size * (POWERS[decimals] ?? 0) >= LIMIT);
    const values = shared ? new Float32Array(this.length) : new Float64Array(this.length);
    let at = 0;
    // Each block is let go as soon as it is copied, so that the peak is one column above the values themselves.
    this.blocks.reverse();
    for (let block = this.blocks.pop(); block !== undefined; block = this.blocks.pop()) {
      if (shared || block.decimals < 0) values.set(block.values, at);
      else restore(block, values, at);
      at += block.values.length;
    }
    return { values, decimals: shared ? decimals : -1 };
  }
}

/** The number that the file's text meant, from its 4-byte form; see the top of this file. */
export function restoreDecimal(value: number, decimals: number): number {
  const power = POWERS[decimals] ?? 1;
  return Math.round(value * power) / power;
}

function restore(block: Block, values: Float32Array | Float64Array, at: number): void {
  for (let i = 0; i < block.values.length; i++) {
    values[at + i] = restoreDecimal(block.values[i] ?? Number.NaN, block.decimals);
  }
}

function allHaveDecimals(stage: Float64Array, first: number, stride: number, end: number, power: number): boolean {
  for (let i = first; i < end; i += stride) {
    const value = stage[i] ?? Number.NaN;
    if (!Number.isNaN(value) && Math.round(value * power) / power !== value) return false;
  }
  return true;
}
