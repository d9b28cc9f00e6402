// From bytes to numbers, row by row, without a string or an object on the way for as long as rows are plain. There are
// four ways through a row, each of which gives the same bits: plainRows for short plain numbers, mixedRows for long ones
// and for columns of words, alikeRows for those that are written as the row before, digit under digit, and the way here
// for everything else, cell by cell.

import { LineMap } from './lineMap.ts';
import { decimalsOfPlain, plainNumber } from './plainNumber.ts';
import { QuickRows } from './quickRows.ts';
import { BLANK, CR, LF, type OddCells, QUOTE, type ScanPlan, SKIP, type Stage, TAB, TEXT } from './scanPlan.ts';

/** Values on the stage: few enough to stay in the nearest cache of a core. */
const STAGE_VALUES = 16_384;

export class RowScanner {
  private readonly plan: ScanPlan;
  private readonly cells: OddCells;
  private readonly stage: Stage;
  private readonly quick: QuickRows;
  /** What cell read. */
  private value = Number.NaN;
  /** Whether the row has a cell that is no number where one was due. */
  private strange = false;
  /** Rows handed out so far. */
  rows = 0;
  /** Told of every place where rows and lines drift apart. */
  readonly lines: LineMap;

  constructor(plan: ScanPlan, cells: OddCells) {
    this.plan = plan;
    this.cells = cells;
    this.lines = new LineMap(plan.firstLine);
    const width = plan.kinds.length;
    const capacity = Math.max(64, Math.floor(STAGE_VALUES / width));
    this.stage = {
      values: new Float64Array(capacity * width),
      capacity,
      filled: 0,
      decimals: new Int32Array(width),
      line: plan.firstLine,
    };
    this.quick = new QuickRows(plan, this.stage, cells);
  }

  /** Tells that an odd number of a column had this many digits after its decimal sign. */
  sawDecimals(column: number, decimals: number): void {
    if (decimals > (this.stage.decimals[column] ?? 0)) this.stage.decimals[column] = decimals;
  }

  /**
   * Reads all rows from `from` up to `to`, which must lie right behind a line end. Returns where the first row begins
   * that could not be read because a quoted cell is still open, or `to`.
   */
  scan(bytes: Uint8Array, from: number, to: number): number {
    const { stage } = this;
    let pos = from;
    while (pos < to && !this.cells.closed) {
      let next = this.quick.read(bytes, pos, to);
      if (stage.filled === stage.capacity) this.flush();
      else if (next === pos) {
        this.quick.tellOdd(this.rows);
        next = this.anyRow(bytes, pos, to);
        if (next < 0) return pos;
      }
      pos = next;
    }
    return to;
  }

  /** Hands out the rows that are still on the stage. */
  finish(): void {
    if (this.stage.filled > 0) this.flush();
  }

  private flush(): void {
    const { values, filled, decimals } = this.stage;
    this.cells.flush(values, filled, decimals);
    this.rows += filled;
    this.stage.filled = 0;
  }

  /** Reads one row of any kind. Returns where the next one begins, or -1 where this one does not end before `to`. */
  private anyRow(bytes: Uint8Array, rowStart: number, to: number): number {
    const { delimiter, blanks, kinds, names, need } = this.plan;
    const { values, filled } = this.stage;
    const width = kinds.length;
    const base = filled * width;
    let pos = rowStart;
    let column = 0;
    this.strange = false;
    let c = bytes[pos] ?? LF;
    if (blanks) while (c === BLANK || c === TAB) c = bytes[++pos] ?? LF;
    for (; c !== LF && c !== CR; column++) {
      while (c === BLANK) c = bytes[++pos] ?? LF;
      const end = this.cell(column, bytes, pos, to);
      if (end < 0) return this.endOddRow(bytes, rowStart, -1, to, column);
      pos = end;
      if (column < width) values[base + column] = this.value;
      c = bytes[pos] ?? LF;
      if (c === delimiter || (blanks && c === TAB)) {
        c = bytes[++pos] ?? LF;
        if (blanks) while (c === BLANK || c === TAB) c = bytes[++pos] ?? LF;
        else if ((c === LF || c === CR) && ++column < width) values[base + column] = Number.NaN;
      }
    }
    const lacks = (needed: number): boolean => needed >= 0 && Number.isNaN(values[base + needed] ?? 0);
    if (column !== width || this.strange || lacks(need) || lacks(names)) {
      return this.endOddRow(bytes, rowStart, pos, to, column);
    }
    this.endRow(true, 1);
    return pos + (c === CR && bytes[pos + 1] === LF ? 2 : 1);
  }

  /** Reads a cell into `value`. Returns its end, or -1 where the row is a difficult one. */
  private cell(column: number, bytes: Uint8Array, start: number, to: number): number {
    const { delimiter, blanks, kinds, decimal } = this.plan;
    const end = cellEnd(bytes, start, to, delimiter, blanks);
    if (end < 0) return -1;
    this.value = Number.NaN;
    const kind = column < kinds.length ? kinds[column] : SKIP;
    if (kind === SKIP || end === start) return end;
    if (kind === TEXT) this.value = this.cells.text(column, bytes, start, end, this.stage.line);
    else {
      let last = end;
      while (bytes[last - 1] === BLANK) last--;
      this.value = plainNumber(bytes, start, last, decimal);
      if (Number.isNaN(this.value)) this.value = this.cells.odd(column, bytes, start, end, this.stage.line);
      else this.sawDecimals(column, decimalsOfPlain(bytes, start, last, decimal));
    }
    if (Number.isNaN(this.value)) this.strange = true;
    return end;
  }

  /** Ends a row that is blank, too short, too long, or has odd cells. Returns where the next begins, -1 for not yet. */
  private endOddRow(bytes: Uint8Array, rowStart: number, pos: number, to: number, column: number): number {
    const { cells } = this;
    const { values, filled, line } = this.stage;
    const width = this.plan.kinds.length;
    const base = filled * width;
    if (pos < 0) {
      const row = cells.difficult(values, base, bytes, rowStart, to, line);
      if (row.next >= 0) this.endRow(row.kept, row.lines);
      return row.next;
    }
    let kept = false;
    if (column > 0) {
      for (let k = column; k < width; k++) values[base + k] = Number.NaN;
      kept = cells.keeps(values, base, column, bytes, rowStart, pos, line);
    }
    this.endRow(kept, 1);
    return pos + (bytes[pos] === CR && bytes[pos + 1] === LF ? 2 : 1);
  }

  private endRow(kept: boolean, lines: number): void {
    const { stage } = this;
    stage.line += lines;
    if (kept) stage.filled++;
    if (!kept || lines !== 1) this.lines.drift(this.rows + stage.filled, stage.line);
    if (stage.filled === stage.capacity) this.flush();
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
