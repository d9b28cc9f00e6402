import { POWERS_OF_TEN, plainNumber } from './plainNumber.ts';
import type { OddCells, ScanPlan, Stage } from './scanPlan.ts';

/**
 * The second loop: plainRows with long numbers, columns to be skipped, and columns of words or times in their usual
 * form. Same promise: stops at the beginning of a row that it cannot read, of which nothing is noted yet.
 */
export function mixedRows(
  bytes: Uint8Array,
  from: number,
  to: number,
  plan: ScanPlan,
  stage: Stage,
  most: number,
  cells: OddCells,
): number {
  const LF = 10;
  const CR = 13;
  const BLANK = 32;
  const QUOTE = 34;
  const MINUS = 45;
  const ZERO = 48;
  const NINE = 57;
  const SHORT_DIGITS = 9;
  const NUMBER = 0;
  const SKIP = 1;
  const powers = POWERS_OF_TEN;
  const { delimiter, decimal, kinds, names, need } = plan;
  const { values, capacity, decimals } = stage;
  const full = Math.min(capacity, stage.filled + most);
  const width = kinds.length;
  let { filled } = stage;
  let rowStart = from;
  rows: while (rowStart < to && filled < full) {
    let pos = rowStart;
    const base = filled * width;
    let column = 0;
    let c = 0;
    do {
      if (column === width) break rows;
      c = bytes[pos] ?? LF;
      while (c === BLANK) c = bytes[++pos] ?? LF;
      let value = Number.NaN;
      const start = pos;
      const kind = kinds[column] ?? SKIP;
      if (kind === NUMBER) {
        const negative = c === MINUS;
        if (negative) c = bytes[++pos] ?? LF;
        const first = pos;
        let mantissa = 0;
        let scale = 0;
        while (c >= ZERO && c <= NINE) {
          mantissa = (mantissa * 10 + c - ZERO) | 0;
          c = bytes[++pos] ?? LF;
        }
        if (c === decimal) {
          const fraction = ++pos;
          c = bytes[pos] ?? LF;
          while (c >= ZERO && c <= NINE) {
            mantissa = (mantissa * 10 + c - ZERO) | 0;
            c = bytes[++pos] ?? LF;
          }
          scale = pos - fraction;
          if (scale > (decimals[column] ?? 0)) decimals[column] = scale;
        }
        const length = pos - first;
        if (length > SHORT_DIGITS) value = plainNumber(bytes, first, pos, decimal);
        else if (length > 0) value = mantissa / (powers[scale] ?? 1);
        if (negative) value = -value;
        while (c === BLANK) c = bytes[++pos] ?? LF;
      } else {
        if (c === QUOTE) break rows;
        while (c !== delimiter && c !== LF && c !== CR) c = bytes[++pos] ?? LF;
        if (kind !== SKIP && pos > start) value = cells.quick(column, bytes, start, pos);
      }
      if (Number.isNaN(value) && kind !== SKIP && (pos > start || column === need || column === names)) break rows;
      values[base + column] = value;
      column++;
      pos++;
    } while (c === delimiter);
    if (column !== width || pos === rowStart + 1) break;
    if (c === CR && bytes[pos] === LF) pos++;
    else if (c !== LF && c !== CR) break;
    rowStart = pos;
    filled++;
  }
  stage.line += filled - stage.filled;
  stage.filled = filled;
  return rowStart;
}
