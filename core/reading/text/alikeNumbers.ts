// One column of numbers in rows that are written alike, so many bytes apart. Where each digit stands is known beforehand,
// so four digits are fetched, checked and added up at once, and the only branch in a number is the check.

import { POWERS_OF_TEN } from './plainNumber.ts';

/** How a number is written: its sign, and its digits before and after the decimal sign. */
export interface NumberForm {
  readonly negative: boolean;
  /** 1 to MOST_DIGITS. */
  readonly whole: number;
  /** 0 to MOST_DIGITS; without a decimal sign where 0. */
  readonly fraction: number;
}

/** Digits on either side of the decimal sign: two words of four. */
export const MOST_DIGITS = 8;

/**
 * Reads `rows` numbers of one form, the first of which begins at byte `from` of `view`, each `stride` bytes behind the
 * one before, into every `width`-th of `values` from `at` on. `after` is the byte that must follow. The 8 bytes before
 * `from` are looked at too, and must be there. Returns how many rows were read: the first that is written otherwise ends
 * it. The digits of a number must not be more than 15, so that it is exact until the one division.
 *
 * The loop calls nothing and writes its constants out: what belongs to the module would be looked up for every number
 * (measured: a fifth more time). A word holds four digits, the first of them in its lowest byte, with '0' (0x30) taken off
 * each. Added to 6, a digit stays in the lower half of its byte, and anything else does not. Times 10 * 256 + 1, two
 * digits make a pair; times 100 * 65536 + 1, two pairs make the number.
 */
export function alikeNumbers(
  view: DataView,
  from: number,
  stride: number,
  rows: number,
  { negative, whole, fraction }: NumberForm,
  decimal: number,
  after: number,
  values: Float64Array,
  at: number,
  width: number,
): number {
  const wholeMask = lastDigits(Math.min(whole, 4)) | 0;
  const wholeHigh = lastDigits(whole - 4) | 0;
  const fractionMask = lastDigits(Math.min(fraction, 4)) | 0;
  const fractionHigh = lastDigits(fraction - 4) | 0;
  const toEnd = (fraction === 0 ? 0 : fraction + 1) | 0;
  const toSign = (negative ? whole + 1 : 0) | 0;
  const power = Number(POWERS_OF_TEN[fraction]);
  const divisor = negative ? -power : power;
  // | 0 tells the compiler that these are whole numbers and stay so.
  const step = stride | 0;
  const skip = width | 0;
  const count = rows | 0;
  const last = after | 0;
  const sign = decimal | 0;
  let point = negative ? (from + 1 + whole) | 0 : (from + whole) | 0;
  let k = at | 0;
  for (let row = 0; row < count; row = (row + 1) | 0) {
    const end = (point + toEnd) | 0;
    let word = (view.getInt32(point - 4, true) ^ 0x30303030) & wholeMask;
    let strays = word | (word + 0x06060606);
    let others = view.getUint8(end) ^ last;
    let number = Math.imul((Math.imul(word, 2561) >>> 8) & 0x00ff00ff, 6553601) >>> 16;
    if (wholeHigh !== 0) {
      word = (view.getInt32(point - 8, true) ^ 0x30303030) & wholeHigh;
      strays |= word | (word + 0x06060606);
      number += 10000 * (Math.imul((Math.imul(word, 2561) >>> 8) & 0x00ff00ff, 6553601) >>> 16);
    }
    let scaled = number;
    if (toEnd !== 0) {
      word = (view.getInt32(end - 4, true) ^ 0x30303030) & fractionMask;
      strays |= word | (word + 0x06060606);
      others |= view.getUint8(point) ^ sign;
      let part = Math.imul((Math.imul(word, 2561) >>> 8) & 0x00ff00ff, 6553601) >>> 16;
      if (fractionHigh !== 0) {
        word = (view.getInt32(end - 8, true) ^ 0x30303030) & fractionHigh;
        strays |= word | (word + 0x06060606);
        part += 10000 * (Math.imul((Math.imul(word, 2561) >>> 8) & 0x00ff00ff, 6553601) >>> 16);
      }
      scaled = number * power + part;
    }
    if (toSign !== 0) others |= view.getUint8(point - toSign) ^ 45; // minus
    if (((strays & 0xf0f0f0f0) | others) !== 0) return row;
    values[k] = scaled / divisor;
    k = (k + skip) | 0;
    point = (point + step) | 0;
  }
  return count;
}

/** Mask of the last `digits` bytes of a word that was fetched lowest byte first: 0 for none. */
function lastDigits(digits: number): number {
  return digits <= 0 ? 0 : -1 << (32 - 8 * digits);
}
