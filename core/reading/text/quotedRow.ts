/** Where a row with quoted cells ends. */
export interface QuotedRow {
  /** Position of its line end; -1 where that lies beyond the bytes at hand. */
  readonly end: number;
  /** Lines it spans. */
  readonly lines: number;
  /** True where a quote was opened and not closed within reason: the quotes mean nothing, and the row is its first line. */
  readonly stray: boolean;
}

/** A quoted cell that spans more lines than this was opened by a quote that stands there by mistake. */
const MOST_LINES = 64;
/** A row with quotes that is longer than this, in bytes, is not looked at cell by cell. */
const MOST_BYTES = 256 * 1024;

/** Finds the end of the row that begins at `start`; quoted cells may hold line ends, as RFC 4180 allows. */
export function quotedRow(bytes: Uint8Array, start: number, to: number, delimiter: number): QuotedRow {
  let open = false;
  let cellStart = true;
  let lines = 1;
  let firstEnd = -1;
  for (let pos = start; pos < to; pos++) {
    const c = bytes[pos];
    const lineEnd = c === 10 || c === 13;
    if (lineEnd && !open) return { end: pos, lines, stray: pos - start > MOST_BYTES };
    if (lineEnd) {
      if (firstEnd < 0) firstEnd = pos;
      if (c === 13 && bytes[pos + 1] === 10) pos++;
      if (++lines > MOST_LINES) return { end: firstEnd, lines: 1, stray: true };
    } else if (open && c === 34) {
      if (bytes[pos + 1] === 34) pos++;
      else open = false;
    } else if (!open) {
      if (c === 34 && cellStart) open = true;
      cellStart = c === delimiter || (cellStart && c === 32);
    }
  }
  return { end: -1, lines: 0, stray: false };
}
