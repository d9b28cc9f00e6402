// Times while a file is read. As long as they are regular, nothing is stored but start, step and count; the first time
// that is not where the step puts it turns all of them into a list.

import { wideRoom } from '../../capture/columnRoom.ts';
import { simplestStep } from './simplestStep.ts';

/** How far a time may lie from its place on the regular base, s. */
const TOLERANCE_S = 1e-9;

/** Times of a file: described where they are regular, in the file's unit either way. */
export type StoredTimes =
  | { readonly kind: 'regular'; readonly start: number; readonly step: number; readonly length: number }
  | { readonly kind: 'listed'; readonly times: Float64Array };

export class TimeStore {
  private readonly expected: number;
  private readonly tolerance: number;
  private start = 0;
  private step = 0;
  private length = 0;
  private listed: Float64Array | null = null;

  /** `perSecond` of the file's units make a second; `expected` times are made room for if they must be listed. */
  constructor(perSecond: number, expected: number) {
    this.tolerance = TOLERANCE_S * perSecond;
    this.expected = expected;
  }

  /** As ColumnStore.take. */
  take(stage: Float64Array, first: number, stride: number, rows: number): void {
    if (this.length === 0) this.begin(stage, first, stride, rows);
    if (this.listed === null && !this.isRegular(stage, first, stride, rows)) this.listed = this.asList(rows);
    if (this.listed !== null) {
      if (this.length + rows > this.listed.length) this.listed = grown(this.listed, this.length + rows);
      for (let k = 0, i = first; k < rows; k++, i += stride) this.listed[this.length + k] = stage[i] ?? Number.NaN;
    }
    this.length += rows;
  }

  /** Bytes that are taken. */
  get bytes(): number {
    return this.listed?.byteLength ?? 0;
  }

  finish(): StoredTimes {
    const { start, step, length, listed } = this;
    if (listed !== null) return { kind: 'listed', times: listed.subarray(0, length) };
    // Two times make any step regular.
    if (length < 3 || !(step > 0)) return { kind: 'listed', times: this.asList(0).subarray(0, length) };
    return { kind: 'regular', start, step, length };
  }

  private begin(stage: Float64Array, first: number, stride: number, rows: number): void {
    this.start = stage[first] ?? Number.NaN;
    const last = stage[first + (rows - 1) * stride] ?? Number.NaN;
    const mean = (last - this.start) / Math.max(1, rows - 1);
    this.step = simplestStep(mean, rows, this.allowed() / 2);
  }

  private isRegular(stage: Float64Array, first: number, stride: number, rows: number): boolean {
    const { start, step, length } = this;
    const allowed = this.allowed();
    for (let k = 0, i = first; k < rows; k++, i += stride) {
      const off = (stage[i] ?? Number.NaN) - (start + (length + k) * step);
      if (!(off <= allowed && off >= -allowed)) return false;
    }
    return true;
  }

  /** Beside the seconds since 1970 a number has room for a quarter of a microsecond only. */
  private allowed(): number {
    const epoch = Math.abs(this.start) > 1e7 * (this.tolerance / TOLERANCE_S);
    return epoch ? this.tolerance * 500 : this.tolerance;
  }

  /** What the file said so far, with room for more: the nearest number of nine decimals is the number that was read. */
  private asList(rows: number): Float64Array {
    const list = wideRoom(Math.max(this.expected, this.length + rows));
    const ticks = Math.abs(this.start) > 4e6 ? 1e6 : 1e9;
    for (let i = 0; i < this.length; i++) list[i] = Math.round((this.start + i * this.step) * ticks) / ticks;
    return list;
  }
}

function grown(values: Float64Array, least: number): Float64Array {
  const larger = wideRoom(Math.max(least, Math.ceil(values.length * 1.6)));
  larger.set(values);
  return larger;
}
