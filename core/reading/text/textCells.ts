import { convert } from '../../units/convert.ts';
import { splitValueUnit } from './cellKind.ts';
import { MOST_DECIMALS } from './columnStore.ts';
import { decodeText } from './decodeText.ts';
import type { Dialect } from './dialect.ts';
import type { Encoding } from './encoding.ts';
import { laterHeader } from './laterHeader.ts';
import { isMissingWord } from './missingWords.ts';
import { decimalsOf, parseNumber } from './parseNumber.ts';
import { quotedRow } from './quotedRow.ts';
import { isHollow, splitQuoted, unquoted } from './rowText.ts';
import { type DifficultRow, NUMBER, type OddCells, SKIP } from './scanPlan.ts';
import { add, type TextTally } from './tally.ts';
import type { TextReader } from './textReaders.ts';

/** Of a longer row, bytes, only the beginning is looked at. */
const LONGEST_ROW = 256 * 1024;

/** What the slow path needs to know. */
export interface CellPlan {
  readonly dialect: Dialect;
  readonly encoding: Encoding;
  readonly kinds: Uint8Array;
  readonly readers: readonly (TextReader | null)[];
  readonly headings: readonly string[];
  /** Cells that the rows of data have. */
  readonly rowCells: number;
  /** Columns of which at least one must hold a value for the row to be kept. */
  readonly needed: readonly number[];
  /** The unit into which a number with this unit behind it is put in a column's cells. */
  unitFor(column: number, unit: string): string;
  sawDecimals(column: number, decimals: number): void;
  flush(stage: Float64Array, rows: number, decimals: Int32Array): void;
}

/** Everything that the row loop does not know: words, quotes, long numbers, times, rows that are no rows. */
export class TextCells implements OddCells {
  private readonly plan: CellPlan;
  private readonly tally: TextTally;
  /** Cells of the row being read that gave no value; told only if the row is kept. */
  private pending: { readonly column: number; readonly text: string; readonly missing: boolean }[] = [];
  private pendingLine = -1;
  closed = false;

  constructor(plan: CellPlan, tally: TextTally) {
    this.plan = plan;
    this.tally = tally;
  }

  odd(column: number, bytes: Uint8Array, start: number, end: number, line: number): number {
    return this.numberIn(column, unquoted(decodeText(bytes, start, end, this.plan.encoding)), line);
  }

  quick(column: number, bytes: Uint8Array, start: number, end: number): number {
    return this.plan.readers[column]?.quick(bytes, start, end) ?? Number.NaN;
  }

  text(column: number, bytes: Uint8Array, start: number, end: number, line: number): number {
    const value = this.textIn(column, unquoted(decodeText(bytes, start, end, this.plan.encoding)), line);
    this.plan.readers[column]?.learn(bytes, start, end, value);
    return value;
  }

  keeps(
    stage: Float64Array,
    at: number,
    cells: number,
    bytes: Uint8Array,
    start: number,
    end: number,
    line: number,
  ): boolean {
    const { needed, kinds, encoding, dialect, rowCells } = this.plan;
    const seen = () => decodeText(bytes, start, Math.min(end, start + 400), encoding);
    if (isHollow(bytes, start, end)) {
      if (bytes[start] === 0) add(this.tally.zeros, line, '');
      // What came before it has its line end.
      this.tally.openEnd = false;
      return false;
    }
    // The line end that the feeder adds to an open last row is the last byte of all.
    if (this.tally.openEnd && cells < kinds.length && end >= bytes.length - 1) {
      add(this.tally.cut, line, seen());
      return false;
    }
    if (dialect.delimiter === ' ' && cells < rowCells && this.hasValue(stage, at)) {
      add(this.tally.unplaced, line, seen());
      return false;
    }
    const missing = needed.some((column) => Number.isNaN(stage[at + column]));
    if (!missing && this.hasValue(stage, at)) {
      this.tellPending(line);
      if (cells < kinds.length) add(this.tally.short, line, '');
      else if (cells > kinds.length) add(this.tally.long, line, '');
      return true;
    }
    this.leaveOut(line, seen());
    return false;
  }

  difficult(stage: Float64Array, at: number, bytes: Uint8Array, start: number, to: number, line: number): DifficultRow {
    const { dialect, encoding, kinds } = this.plan;
    const { end, lines, stray } = quotedRow(bytes, start, to, dialect.delimiter.charCodeAt(0));
    if (end < 0) return { next: -1, kept: false, lines: 0 };
    const text = decodeText(bytes, start, Math.min(end, start + LONGEST_ROW), encoding);
    const row = stray ? text.replaceAll('"', ' ').split(dialect.delimiter) : splitQuoted(text, dialect);
    for (let column = 0; column < kinds.length; column++) {
      const cell = row[column] ?? '';
      const kind = kinds[column];
      if (kind === SKIP || cell.trim() === '') stage[at + column] = Number.NaN;
      else stage[at + column] = kind === NUMBER ? this.numberIn(column, cell, line) : this.textIn(column, cell, line);
    }
    const next = end + (bytes[end] === 13 && bytes[end + 1] === 10 ? 2 : 1);
    return { next, kept: this.keeps(stage, at, row.length, bytes, start, end, line), lines };
  }

  flush(stage: Float64Array, rows: number, decimals: Int32Array): void {
    this.plan.flush(stage, rows, decimals);
  }

  private numberIn(column: number, cell: string, line: number): number {
    const { decimal } = this.plan.dialect;
    const text = cell.trim();
    const value = parseNumber(text, decimal);
    if (!Number.isNaN(value)) {
      this.plan.sawDecimals(column, decimalsOf(text));
      return value;
    }
    if (text === '') return value;
    const withUnit = splitValueUnit(text, decimal);
    if (withUnit !== null) {
      const unit = this.plan.unitFor(column, withUnit.unit);
      const own = decimalsOf(text.replace(/[^\d.,eE+-].*$/, ''));
      this.plan.sawDecimals(column, unit === withUnit.unit ? own : MOST_DECIMALS);
      return inColumnUnit(withUnit, unit);
    }
    this.noValue(column, line, text, isMissingWord(text));
    return value;
  }

  private textIn(column: number, cell: string, line: number): number {
    const reader = this.plan.readers[column] ?? null;
    const text = cell.trim();
    if (reader === null || text === '') return Number.NaN;
    const value = reader.read(text);
    if (Number.isNaN(value)) this.noValue(column, line, text, isMissingWord(text));
    return value;
  }

  private noValue(column: number, line: number, text: string, missing: boolean): void {
    if (line !== this.pendingLine) this.pending = [];
    this.pendingLine = line;
    this.pending.push({ column, text, missing });
  }

  private tellPending(line: number): void {
    if (line !== this.pendingLine) return;
    for (const { column, text, missing } of this.pending) {
      if (missing) add(this.tally.missing, line, text);
      else this.tally.unreadableCell(column, line, text);
    }
    this.pending = [];
  }

  private hasValue(stage: Float64Array, at: number): boolean {
    for (let column = 0; column < this.plan.kinds.length; column++) {
      if (this.plan.kinds[column] !== SKIP && !Number.isNaN(stage[at + column])) return true;
    }
    return false;
  }

  /** Counts a row without a time or a number as what it is. Behind the header of another table nothing is read. */
  private leaveOut(line: number, text: string): void {
    const { dialect, headings } = this.plan;
    const kind = laterHeader(splitQuoted(text, dialect), headings);
    add(
      kind === 'same' ? this.tally.headers : kind === 'other' ? this.tally.otherTable : this.tally.skipped,
      line,
      text,
    );
    this.closed = kind === 'other';
  }
}

/** Instruments change from mV to V as they go; the column keeps the unit it began with. */
function inColumnUnit({ value, unit }: { value: number; unit: string }, columnUnit: string): number {
  if (columnUnit === unit) return value;
  return convert(value, unit, columnUnit) ?? Number.NaN;
}
