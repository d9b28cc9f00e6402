// Instruments write row after row alike, digit under digit. Once a row has been read, those behind it that are written as
// it is are read column by column, without looking for the ends of their cells.

import { alikeNumbers, MOST_DIGITS } from './alikeNumbers.ts';
import { alikeWords } from './alikeWords.ts';
import { CR, LF, NUMBER, type OddCells, type ScanPlan, type Stage } from './scanPlan.ts';

const MINUS = 45;
const ZERO = 48;
const NINE = 57;
const EXACT_DIGITS = 15;

/**
 * Reads the rows behind the row from `model` to `from`, which was read by other means, for as long as they are written
 * like it, are not more than `most`, the stage has room, and they end before `to`. Returns where it stopped, at the
 * beginning of a row.
 */
export function alikeRows(
  bytes: Uint8Array,
  model: number,
  from: number,
  to: number,
  most: number,
  { delimiter, decimal, kinds }: ScanPlan,
  stage: Stage,
  cells: OddCells,
): number {
  const stride = from - model;
  const width = kinds.length;
  let rows = Math.min(most, stage.capacity - stage.filled, Math.floor((to - from) / stride));
  if (rows === 0 || from < MOST_DIGITS) return from;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const base = stage.filled * width;
  let pos = model;
  for (let column = 0; column < width && rows > 0; column++) {
    const start = pos;
    if (kinds[column] === NUMBER) {
      const negative = bytes[pos] === MINUS;
      if (negative) pos++;
      const first = pos;
      pos = digitsEnd(bytes, pos);
      const whole = pos - first;
      if (bytes[pos] === decimal) pos = digitsEnd(bytes, pos + 1);
      const fraction = Math.max(0, pos - first - whole - 1);
      // An empty cell, blanks, a long number, or a decimal sign without digits on both sides.
      if (whole < 1 || whole > MOST_DIGITS || fraction > MOST_DIGITS || whole + fraction > EXACT_DIGITS) return from;
      const after = bytes[pos] ?? 0;
      if (after !== delimiter && after !== LF && after !== CR) return from;
      const form = { negative, whole, fraction };
      const begin = start + stride;
      rows = alikeNumbers(view, begin, stride, rows, form, decimal, after, stage.values, base + column, width);
    } else {
      for (let c = bytes[pos]; c !== delimiter && c !== LF && c !== CR && pos < from; ) c = bytes[++pos];
      const words = { column, kind: kinds[column] ?? 0, length: pos - start, after: bytes[pos] ?? 0 };
      rows = alikeWords(
        bytes,
        start + stride,
        stride,
        rows,
        words,
        delimiter,
        cells,
        stage.values,
        base + column,
        width,
      );
    }
    pos++;
  }
  if (bytes[from - 2] === CR) rows = withLineFeed(bytes, from + stride - 1, stride, rows);
  stage.filled += rows;
  stage.line += rows;
  return from + rows * stride;
}

function digitsEnd(bytes: Uint8Array, start: number): number {
  let pos = start;
  for (let c = bytes[pos] ?? 0; c >= ZERO && c <= NINE; ) c = bytes[++pos] ?? 0;
  return pos;
}

/** The rows that end in CR LF, as the model does: the columns have looked at the CR only. */
function withLineFeed(bytes: Uint8Array, at: number, stride: number, rows: number): number {
  for (let row = 0, pos = at; row < rows; row++, pos += stride) if (bytes[pos] !== LF) return row;
  return rows;
}
