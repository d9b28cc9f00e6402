// Values of one column while a file is read: 4 bytes a value where the file's decimals allow it, else 8.
//
// When do 4 bytes do? A decimal number k / 10^d with |k| < 2^23 comes back exactly from its nearest 4-byte number: the
// error is at most 2^-24 of the number, which is less than half a unit of k. So Math.round(f * 10^d) / 10^d is the very
// number that Number() gives for the file's text, and nothing that the instrument wrote is lost. As soon as a longer
// number turns up, the column is widened, and what it held so far is restored that way.

import { BLOCK, type BlockExtremes, blocksFor } from '../../capture/blockExtremes.ts';
import { narrowRoom, wideRoom } from '../../capture/columnRoom.ts';
import { type ColumnRange, copyNarrow, copyWide, type OnStage } from './copyColumn.ts';

const LIMIT = 2 ** 23;
/** Of more digits after the decimal sign nothing is to be made in 4 bytes; also where nobody knows how many there are. */
export const MOST_DECIMALS = 15;
const POWERS = Float64Array.from({ length: MOST_DECIMALS + 1 }, (_, d) => 10 ** d);

/** A finished column. `decimals` is what restoreDecimal needs; -1 for 8-byte values, which need nothing. */
export interface StoredColumn {
  readonly values: Float32Array | Float64Array;
  readonly decimals: number;
  readonly range: ColumnRange;
  /** Extremes of the values as they stand here. */
  readonly blocks: BlockExtremes;
}

export class ColumnStore {
  private narrow: Float32Array;
  private wide: Float64Array | null;
  private length = 0;
  private decimals = 0;
  private blocks: BlockExtremes;
  private readonly range: ColumnRange = { finite: 0, min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY };

  /** `expected` values are made room for; more may come. `exact` keeps 8 bytes whatever the values are: times. */
  constructor(exact: boolean, expected = 0) {
    this.narrow = narrowRoom(exact ? 0 : expected);
    this.wide = exact ? wideRoom(expected) : null;
    this.blocks = blocksFor(expected);
  }

  /**
   * Takes `rows` values that lie `stride` apart in `stage`, from index `first` on. `decimals` is the most digits after
   * the decimal sign that any number of the column was written with so far.
   */
  take(stage: Float64Array, first: number, stride: number, rows: number, decimals: number): void {
    const on: OnStage = { stage, first, stride, rows };
    const length = this.length + rows;
    const { range } = this;
    this.makeRoom(length);
    if (this.wide === null) {
      range.finite += copyNarrow(on, this.narrow, this.length, this.blocks, range);
      if (!this.stillFits(on, decimals)) copyWide(on, this.widen(length), this.length, this.blocks, range);
    } else range.finite += copyWide(on, this.wide, this.length, this.blocks, range);
    this.length = length;
  }

  private makeRoom(length: number): void {
    if (this.wide === null) {
      if (length > this.narrow.length) this.narrow = grown(this.narrow, length);
    } else if (length > this.wide.length) this.wide = grownWide(this.wide, length);
    const room = Math.max(this.narrow.length, this.wide?.length ?? 0);
    if (room > this.blocks.low.length * BLOCK) this.blocks = blocksFor(room, this.blocks);
  }

  /** Bytes that are taken, room for more counted in. */
  get bytes(): number {
    return this.narrow.byteLength + (this.wide?.byteLength ?? 0) + 2 * this.blocks.low.byteLength;
  }

  /** Whether 4 bytes still do for the whole column, this stage included; finds the column's own decimals if need be. */
  private stillFits(on: OnStage, decimals: number): boolean {
    const { min, max, finite } = this.range;
    if (finite === 0) return true;
    const largest = Math.max(Math.abs(min), Math.abs(max));
    if (largest * (POWERS[Math.max(decimals, this.decimals)] ?? Number.POSITIVE_INFINITY) < LIMIT) {
      this.decimals = Math.max(this.decimals, decimals);
      return true;
    }
    // Zeros at the end may have made them longer than they are.
    for (let d = this.decimals; d <= Math.min(decimals, MOST_DECIMALS); d++) {
      const power = POWERS[d] ?? Number.POSITIVE_INFINITY;
      if (largest * power >= LIMIT) return false;
      if (allHaveDecimals(on, power)) {
        this.decimals = d;
        return true;
      }
    }
    return false;
  }

  private widen(length: number): Float64Array {
    const wide = wideRoom(Math.max(this.narrow.length, length));
    for (let i = 0; i < this.length; i++) wide[i] = restoreDecimal(this.narrow[i] ?? Number.NaN, this.decimals);
    this.wide = wide;
    this.narrow = narrowRoom(0);
    return wide;
  }

  /** The column; the store is empty afterwards. */
  finish(): StoredColumn {
    const values = this.wide === null ? fitted(this.narrow, this.length) : fitted(this.wide, this.length);
    const decimals = this.wide === null ? this.decimals : -1;
    this.narrow = narrowRoom(0);
    this.wide = null;
    return { values, decimals, range: this.range, blocks: this.blocks };
  }
}

/** The number that the file's text meant, from its 4-byte form; see the top of this file. */
export function restoreDecimal(value: number, decimals: number): number {
  const power = POWERS[decimals] ?? 1;
  return Math.round(value * power) / power;
}

/** The used part of an array: a view where little is wasted, else a copy of its own. */
function fitted(values: Float32Array | Float64Array, length: number): Float32Array | Float64Array {
  const used = values.subarray(0, length);
  if (length * 1.1 + 1024 >= values.length) return used;
  const copy = used instanceof Float32Array ? narrowRoom(length) : wideRoom(length);
  copy.set(used);
  return copy;
}

function allHaveDecimals({ stage, first, stride, rows }: OnStage, power: number): boolean {
  for (let k = 0, i = first; k < rows; k++, i += stride) {
    const value = stage[i] ?? Number.NaN;
    if (!Number.isNaN(value) && Math.round(value * power) / power !== value) return false;
  }
  return true;
}

function grown(values: Float32Array, least: number): Float32Array {
  const larger = narrowRoom(roomFor(values.length, least));
  larger.set(values);
  return larger;
}

function grownWide(values: Float64Array, least: number): Float64Array {
  const larger = wideRoom(roomFor(values.length, least));
  larger.set(values);
  return larger;
}

/** A good half more than there was: with several columns, only one of them is copied at a time. */
function roomFor(length: number, least: number): number {
  return Math.max(least, Math.ceil(length * 1.6), 4096);
}
