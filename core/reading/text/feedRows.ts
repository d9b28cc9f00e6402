import type { RowScanner } from './scanRows.ts';

const LF = 10;
const CR = 13;
const QUOTE = 34;
const BLANK = 32;
/** A row longer than this is no row; the open quote or the missing line end is given up. */
const LONGEST_ROW = 1024 * 1024;

/**
 * Gives a scanner whole rows out of chunks of any size. Chunks are read where they lie; only the row that is broken by
 * the end of a chunk is copied.
 */
export class RowFeeder {
  private readonly scanner: RowScanner;
  private readonly endByte: number;
  private rest = new Uint8Array(0);
  private readonly lastRow: { openEnd: boolean };

  /**
   * `onlyCr` where lines end in CR alone. `lastRow` is told when the last row is among those that are read next and
   * has no line end.
   */
  constructor(scanner: RowScanner, onlyCr: boolean, lastRow: { openEnd: boolean }) {
    this.scanner = scanner;
    this.lastRow = lastRow;
    this.endByte = onlyCr ? CR : LF;
  }

  feed(chunk: Uint8Array): void {
    if (this.rest.length === 0) {
      this.scanOwn(chunk);
      return;
    }
    const first = chunk.indexOf(this.endByte);
    if (first < 0 || (this.endByte === CR && first === chunk.length - 1)) {
      this.rest = joined(this.rest, chunk, chunk.length);
      this.cutLongRow();
      return;
    }
    const bridge = joined(this.rest, chunk, first + 1);
    const read = this.scanner.scan(bridge, 0, bridge.length);
    if (read < bridge.length) {
      // A quoted cell is still open: try again with more.
      this.rest = joined(bridge.subarray(read), chunk.subarray(first + 1), chunk.length - first - 1);
      this.rescan();
      return;
    }
    this.rest = EMPTY;
    this.scanOwn(chunk.subarray(first + 1));
  }

  /** The file has ended. */
  finish(): void {
    if (this.rest.length > 0) {
      const last = this.rest[this.rest.length - 1];
      this.lastRow.openEnd = last !== LF && last !== CR;
      this.giveUp();
    }
    this.scanner.finish();
  }

  private scanOwn(bytes: Uint8Array): void {
    let end = bytes.lastIndexOf(this.endByte);
    // A CR at the very end may be half of CR LF.
    if (this.endByte === CR && end === bytes.length - 1) end = end > 0 ? bytes.lastIndexOf(CR, end - 1) : -1;
    const read = end < 0 ? 0 : this.scanner.scan(bytes, 0, end + 1);
    this.rest = read < bytes.length ? bytes.slice(read) : EMPTY;
    this.cutLongRow();
  }

  /** Gives up what cannot be a row, always by the same bytes, whatever the chunks were. */
  private cutLongRow(): void {
    if (this.rest.length <= LONGEST_ROW) return;
    const end = this.rest.lastIndexOf(this.endByte, LONGEST_ROW - 1);
    const after = this.rest.slice(end < 0 ? LONGEST_ROW : end + 1);
    this.rest = this.rest.slice(0, end < 0 ? LONGEST_ROW : end + 1);
    this.giveUp();
    this.rest = after;
    this.rescan();
  }

  private rescan(): void {
    const bytes = this.rest;
    this.rest = EMPTY;
    this.scanOwn(bytes);
  }

  /** Reads what is left as rows, whatever is open in it: line end added, quotes taken as they are. */
  private giveUp(): void {
    const bytes = joined(this.rest, LINE_END, 1);
    this.rest = EMPTY;
    const read = this.scanner.scan(bytes, 0, bytes.length);
    if (read >= bytes.length) return;
    const open = bytes.slice(read);
    for (let i = open.indexOf(QUOTE); i >= 0; i = open.indexOf(QUOTE, i + 1)) open[i] = BLANK;
    this.scanner.scan(open, 0, open.length);
  }
}

const EMPTY = new Uint8Array(0);
const LINE_END = Uint8Array.of(LF);

function joined(first: Uint8Array, second: Uint8Array, length: number): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(first.length + length);
  both.set(first);
  both.set(second.subarray(0, length), first.length);
  return both;
}
