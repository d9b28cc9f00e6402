// What the loops over rows share: which column is what, and who reads what they cannot.

export const NUMBER = 0;
export const SKIP = 1;
export const TEXT = 2;

export const LF = 10;
export const CR = 13;
export const BLANK = 32;
export const TAB = 9;
export const QUOTE = 34;

/** What a cell or a row needs besides digits. Positions are in `bytes`. */
export interface OddCells {
  /** Value of a cell that is no plain number, or NaN. */
  odd(column: number, bytes: Uint8Array, start: number, end: number, line: number): number;
  /** Value of a cell of a TEXT column, not blank, in its usual form; NaN leaves it to \`text\`. Notes nothing. */
  quick(column: number, bytes: Uint8Array, start: number, end: number): number;
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
  /** True behind a row after which nothing of this table can come: what follows is not read. */
  readonly closed: boolean;
  /** The stage is full, or the file has ended. `decimals` of each column as ColumnStore.take wants it. */
  flush(stage: Float64Array, rows: number, decimals: Int32Array): void;
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
  /** The column that names the channel of each row where every row has one of its own, without which it is nothing, or -1. */
  readonly names: number;
  /** A column without which a row is nothing (its time), or -1. */
  readonly need: number;
  /** Line number of the first row of data, from 1. */
  readonly firstLine: number;
}

/** Where the rows that are being read go; shared by the loops. */
export interface Stage {
  /** `capacity` rows of one value for each column. */
  readonly values: Float64Array;
  readonly capacity: number;
  /** Rows on the stage. */
  filled: number;
  /** Most digits after the decimal sign seen in each column. */
  readonly decimals: Int32Array;
  /** Line of the row that is read next, from 1. */
  line: number;
}
