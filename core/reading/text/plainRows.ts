import { POWERS_OF_TEN } from './plainNumber.ts';
import type { ScanPlan, Stage } from './scanPlan.ts';

/**
 * The fastest loop: rows of nothing but short plain numbers, blank cells and delimiters. Reads from `from` until a row
 * that is anything else, until the stage is full, until `most` rows were read, or until `to`, which lies right behind a
 * line end; returns where it stopped, at the beginning of a row.
 *
 * It calls nothing, and its constants are its own, so that everything stays in registers: bundlers turn constants of a
 * module into variables, which cost this loop a third of its speed (measured).
 */
export function plainRows(
  bytes: Uint8Array,
  from: number,
  to: number,
  plan: ScanPlan,
  stage: Stage,
  most: number,
): number {
  const LF = 10;
  const CR = 13;
  const MINUS = 45;
  const ZERO = 48;
  const NINE = 57;
  const SHORT_DIGITS = 9;
  const powers = POWERS_OF_TEN;
  const { delimiter, decimal, kinds, need } = plan;
  const { values, capacity, decimals } = stage;
  const full = Math.min(capacity, stage.filled + most);
  const width = kinds.length;
  let { filled } = stage;
  let rowStart = from;
  rows: while (rowStart < to && filled < full) {
    let pos = rowStart;
    const base = filled * width;
    const rowEnd = base + width;
    let at = base;
    let c = 0;
    do {
      if (at === rowEnd) break rows;
      c = bytes[pos] ?? LF;
      const negative = c === MINUS;
      if (negative) c = bytes[++pos] ?? LF;
      const first = pos;
      let mantissa = 0;
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
        const length = pos - first;
        if (length === 1 || length > SHORT_DIGITS + 1) break rows;
        const scale = pos - fraction;
        if (scale > (decimals[at - base] ?? 0)) decimals[at - base] = scale;
        const value = mantissa / (powers[scale] ?? 1);
        values[at++] = negative ? -value : value;
      } else if (pos === first) {
        if (negative || at - base === need) break rows;
        values[at++] = Number.NaN;
      } else {
        if (pos - first > SHORT_DIGITS) break rows;
        values[at++] = negative ? -mantissa : mantissa;
      }
      pos++;
    } while (c === delimiter);
    // A blank line is a row of one blank cell.
    if (at !== rowEnd || pos === rowStart + 1) break;
    if (c === CR && bytes[pos] === LF) pos++;
    else if (c !== LF && c !== CR) break;
    rowStart = pos;
    filled++;
  }
  stage.line += filled - stage.filled;
  stage.filled = filled;
  return rowStart;
}
