// The one loop that every byte of a plain text passes: from bytes to numbers, row by row, without a string or an object
// on the way. It knows digits, one decimal sign, one delimiter and line ends. Whatever else stands in a cell is handed to
// `odd`, which may take its time.
//
// Numbers of up to 15 digits are exact whole numbers divided by an exact power of ten, and one division of two exact
// numbers is rounded correctly; that is the number Number() gives. Longer ones are left to Number() itself.

import { LineMap } from './lineMap.ts';

export const NUMBER = 0;
export const SKIP = 1;
export const TEXT = 2;

const LF = 10;
const CR = 13;
const BLANK = 32;
const TAB = 9;
const MINUS = 45;
const QUOTE = 34;

const POWERS = Float64Array.from({ length: 23 }, (_, d) => 10 ** d);

/** What a cell or a row needs besides digits. Positions are in `bytes`. */
export interface OddCells {
  /** Value of a cell that is no plain number, or NaN. */
  odd(column: number, bytes: Uint8Array, start: number, end: number, line: number): number;
  /** Value of a cell of a TEXT column. */
  text(column: number, bytes: Uint8Array, start: number, end: number, line: number): number;
  /**
   * Called for a row with too few or too many cells, or in which a cell was no number. Its values stand in `stage` from
   * `at` on. False drops the row.
   */
  keeps(
    stage: Float64Array,
    at: number,
    cells: number,
    bytes: Uint8Array,
    start: number,
    end: number,
    line: number,
  ): boolean;
  /** Reads a whole row with quotes that a simple cell does not have. Writes its values to `stage` from `at` on. */
  difficult(stage: Float64Array, at: number, bytes: Uint8Array, start: number, to: number, line: number): DifficultRow;
  /** The stage is full, or the file has ended. `decimals` as ColumnStore.take wants it. */
  flush(stage: Float64Array, rows: number, decimals: number): void;
}

/** A row that was read by other means. */
export interface DifficultRow {
  /** Where the next row begins, or -1 where this one does not end before `to`. */
  readonly next: number;
  readonly kept: boolean;
  /** Lines it spans. */
  readonly lines: number;
}

export interface ScanPlan {
  readonly delimiter: number;
  /** True where runs of blanks and tabs divide cells; delimiter is then the blank. */
  readonly blanks: boolean;
  readonly decimal: number;
  /** NUMBER, SKIP or TEXT for each column. */
  readonly kinds: Uint8Array;
  /** A column without which a row is nothing (its time), or -1. */
  readonly need: number;
  /** Line number of the first row of data, from 1. */
  readonly firstLine: number;
}

export class RowScanner {
  private readonly plan: ScanPlan;
  private readonly cells: OddCells;
  private readonly stage: Float64Array;
  private readonly blockRows: number;
  private filled = 0;
  private decimals = 0;
  private line: number;
  /** What otherCell read. */
  private value = Number.NaN;
  /** Whether the row has a cell that is no number where one was due. */
  private strange = false;
  /** Whether endOddRow kept the row. */
  private kept = true;
  /** Rows handed out so far. */
  rows = 0;
  /** Told of every place where rows and lines drift apart. */
  readonly lines: LineMap;

  constructor(plan: ScanPlan, cells: OddCells) {
    this.plan = plan;
    this.cells = cells;
    this.line = plan.firstLine;
    this.lines = new LineMap(plan.firstLine);
    const width = plan.kinds.length;
    this.blockRows = Math.max(64, Math.min(16384, Math.floor(262144 / width)));
    this.stage = new Float64Array(this.blockRows * width);
  }

  /** Tells that an odd number had this many digits after its decimal sign. */
  sawDecimals(decimals: number): void {
    if (decimals > this.decimals) this.decimals = decimals;
  }

  /**
   * Reads all rows from `from` up to `to`, which must lie right behind a line end. Returns where the first row begins
   * that could not be read because a quoted cell is still open, or `to`.
   */
  scan(bytes: Uint8Array, from: number, to: number): number {
    const { delimiter, blanks, decimal, kinds, need } = this.plan;
    const { stage, blockRows } = this;
    const width = kinds.length;
    let pos = from;
    while (pos < to) {
      const rowStart = pos;
      const base = this.filled * width;
      let column = 0;
      this.strange = false;
      let c = bytes[pos] ?? LF;
      if (blanks) while (c === BLANK || c === TAB) c = bytes[++pos] ?? LF;
      for (; c !== LF && c !== CR; column++) {
        while (c === BLANK) c = bytes[++pos] ?? LF;
        const start = pos;
        let value = Number.NaN;
        if (column < width && kinds[column] === NUMBER) {
          const negative = c === MINUS;
          if (negative) c = bytes[++pos] ?? LF;
          let length = pos;
          let mantissa = 0;
          let d = c - 48;
          while (d >= 0 && d <= 9) {
            mantissa = (mantissa * 10 + d) | 0;
            c = bytes[++pos] ?? LF;
            d = c - 48;
          }
          length = pos - length;
          let scale = 0;
          if (c === decimal) {
            scale = pos;
            c = bytes[++pos] ?? LF;
            d = c - 48;
            while (d >= 0 && d <= 9) {
              mantissa = (mantissa * 10 + d) | 0;
              c = bytes[++pos] ?? LF;
              d = c - 48;
            }
            scale = pos - scale - 1;
            length += scale;
          }
          while (c === BLANK && !blanks) c = bytes[++pos] ?? LF;
          if (length > 0 && length <= 9 && (c === delimiter || c === LF || c === CR)) {
            value = scale === 0 ? mantissa : mantissa / (POWERS[scale] ?? 1);
            if (scale > this.decimals) this.decimals = scale;
            if (negative) value = -value;
          } else if (pos !== start || (c !== delimiter && c !== LF && c !== CR)) pos = -1;
        } else pos = -1;
        if (pos < 0) {
          pos = this.otherCell(column, bytes, start, to);
          if (pos < 0) break;
          value = this.value;
          c = bytes[pos] ?? LF;
        }
        if (column < width) stage[base + column] = value;
        if (c === delimiter || (blanks && c === TAB)) {
          c = bytes[++pos] ?? LF;
          if (blanks) while (c === BLANK || c === TAB) c = bytes[++pos] ?? LF;
          else if ((c === LF || c === CR) && ++column < width) stage[base + column] = Number.NaN;
        }
      }
      let kept = true;
      if (pos < 0 || column !== width || this.strange || (need >= 0 && Number.isNaN(stage[base + need] ?? 0))) {
        pos = this.endOddRow(bytes, rowStart, pos, to, column);
        if (pos < 0) return rowStart;
        kept = this.kept;
      } else {
        pos += c === CR && bytes[pos + 1] === LF ? 2 : 1;
        this.line++;
      }
      if (kept && ++this.filled === blockRows) this.flush();
    }
    return to;
  }

  /** Hands out the rows that are still on the stage. */
  finish(): void {
    if (this.filled > 0) this.flush();
  }

  private flush(): void {
    this.cells.flush(this.stage, this.filled, this.decimals);
    this.rows += this.filled;
    this.filled = 0;
  }

  /** Reads a cell that is no short plain number into `value`. Returns its end, or -1 where the row is a difficult one. */
  private otherCell(column: number, bytes: Uint8Array, start: number, to: number): number {
    const { delimiter, blanks, kinds } = this.plan;
    const end = cellEnd(bytes, start, to, delimiter, blanks);
    if (end < 0) return -1;
    this.value = Number.NaN;
    const kind = column < kinds.length ? kinds[column] : SKIP;
    if (kind === SKIP) return end;
    this.value =
      kind === NUMBER
        ? this.cells.odd(column, bytes, start, end, this.line)
        : this.cells.text(column, bytes, start, end, this.line);
    if (Number.isNaN(this.value)) this.strange = true;
    return end;
  }

  private drift(): void {
    this.lines.drift(this.rows + this.filled + (this.kept ? 1 : 0), this.line);
  }

  /** Ends a row that is blank, too short, too long, or has odd cells. Returns where the next begins, -1 for not yet. */
  private endOddRow(bytes: Uint8Array, rowStart: number, pos: number, to: number, column: number): number {
    const { cells, stage } = this;
    const width = this.plan.kinds.length;
    const base = this.filled * width;
    if (pos < 0) {
      const row = cells.difficult(stage, base, bytes, rowStart, to, this.line);
      this.kept = row.kept;
      this.line += row.lines;
      if (row.next >= 0) this.drift();
      return row.next;
    }
    this.kept = false;
    if (column > 0) {
      for (let k = column; k < width; k++) stage[base + k] = Number.NaN;
      this.kept = cells.keeps(stage, base, column, bytes, rowStart, pos, this.line);
    }
    this.line++;
    if (!this.kept) this.drift();
    return pos + (bytes[pos] === CR && bytes[pos + 1] === LF ? 2 : 1);
  }
}

/** End of a cell, which is where its delimiter or line end stands; -1 for a cell with quotes that is not simple. */
export function cellEnd(bytes: Uint8Array, start: number, to: number, delimiter: number, blanks: boolean): number {
  let pos = start;
  if (bytes[pos] === QUOTE) {
    pos++;
    for (let c = bytes[pos]; c !== QUOTE; c = bytes[++pos]) {
      if (c === LF || c === CR || pos >= to) return -1;
    }
    pos++;
    while (bytes[pos] === BLANK && !blanks) pos++;
    const c = bytes[pos];
    return c === delimiter || c === LF || c === CR || (blanks && c === TAB) ? pos : -1;
  }
  for (let c = bytes[pos]; c !== delimiter && c !== LF && c !== CR && pos < to; c = bytes[++pos]) {
    if (blanks && c === TAB) break;
  }
  return pos;
}
