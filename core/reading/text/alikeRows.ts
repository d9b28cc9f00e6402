// Instruments write row after row alike, digit under digit, or round after round of rows where each has a channel of its
// own. Once a row or a round has been read, those behind it that are written as it is are read column by column, without
// looking for the ends of their cells.

import { alikeNumbers, MOST_DIGITS } from './alikeNumbers.ts';
import { alikeWords } from './alikeWords.ts';
import { CR, LF, NUMBER, type OddCells, type ScanPlan, type Stage } from './scanPlan.ts';

const MINUS = 45;
const ZERO = 48;
const NINE = 57;
const EXACT_DIGITS = 15;

/**
 * Reads the rounds behind the one from `model` to `from`, whose `round` rows were read by other means, for as long as they
 * are written like it, are not more than `most`, the stage has room, and they end before `to`. Returns where it stopped,
 * at the beginning of a round.
 */
export function alikeRows(
  bytes: Uint8Array,
  model: number,
  from: number,
  to: number,
  round: number,
  most: number,
  { delimiter, decimal, kinds }: ScanPlan,
  stage: Stage,
  cells: OddCells,
): number {
  const stride = from - model;
  const width = kinds.length;
  const apart = round * width;
  let rounds = Math.min(most, Math.floor((stage.capacity - stage.filled) / round), Math.floor((to - from) / stride));
  if (rounds === 0 || from < MOST_DIGITS) return from;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const base = stage.filled * width;
  let pos = model;
  for (let k = 0; k < apart && rounds > 0; k++) {
    const column = k % width;
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
      rounds = alikeNumbers(view, begin, stride, rounds, form, decimal, after, stage.values, base + k, apart);
    } else {
      for (let c = bytes[pos]; c !== delimiter && c !== LF && c !== CR && pos < from; ) c = bytes[++pos];
      const words = { column, kind: kinds[column] ?? 0, length: pos - start, after: bytes[pos] ?? 0 };
      const begin = start + stride;
      rounds = alikeWords(bytes, view, begin, stride, rounds, words, delimiter, cells, stage.values, base + k, apart);
    }
    if (bytes[pos] === CR && bytes[pos + 1] === LF) rounds = withLineFeed(bytes, ++pos + stride, stride, rounds);
    pos++;
  }
  stage.filled += rounds * round;
  stage.line += rounds * round;
  return from + rounds * stride;
}

function digitsEnd(bytes: Uint8Array, start: number): number {
  let pos = start;
  for (let c = bytes[pos] ?? 0; c >= ZERO && c <= NINE; ) c = bytes[++pos] ?? 0;
  return pos;
}

/** The rounds that have a line feed behind this CR, as the model does: the columns have looked at the CR only. */
function withLineFeed(bytes: Uint8Array, at: number, stride: number, rounds: number): number {
  for (let round = 0, pos = at; round < rounds; round++, pos += stride) if (bytes[pos] !== LF) return round;
  return rounds;
}
