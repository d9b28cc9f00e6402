// Numbers straight from bytes, with the very bits that Number() gives for the same text.
//
// Up to 15 digits make a whole number that is exact, powers of ten up to the 22nd are exact, and one multiplication or
// division of two exact numbers is rounded correctly. Longer numbers are handed to Number() itself.

const PLUS = 43;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
const EXACT_DIGITS = 15;
const EXACT_POWER = 22;
/** Powers of ten up to the 22nd, all of them exact. */
export const POWERS_OF_TEN = Float64Array.from({ length: EXACT_POWER + 1 }, (_, d) => 10 ** d);

/**
 * The number from `start` up to `end`, or NaN where the bytes are anything but an optional sign, digits with at most one
 * decimal sign among or beside them, and an optional exponent; NaN also for a number that is too large to be one.
 */
export function plainNumber(bytes: Uint8Array, start: number, end: number, decimal: number): number {
  let pos = start;
  const sign = bytes[pos];
  if (sign === MINUS || sign === PLUS) pos++;
  const first = pos;
  let mantissa = 0;
  let digits = 0;
  let point = -1;
  let c = 0;
  for (; pos < end; pos++) {
    c = bytes[pos] ?? 0;
    if (c >= ZERO && c <= NINE) {
      mantissa = mantissa * 10 + (c - ZERO);
      digits++;
    } else if (c === decimal && point < 0) point = pos;
    else break;
  }
  if (digits === 0) return Number.NaN;
  const exponent = pos === end ? 0 : exponentFrom(bytes, pos, end);
  if (Number.isNaN(exponent)) return Number.NaN;
  const power = exponent - (point < 0 ? 0 : pos - point - 1);
  if (digits > EXACT_DIGITS || power > EXACT_POWER || power < -EXACT_POWER)
    return slowNumber(bytes, start, end, decimal);
  const value = power < 0 ? mantissa / (POWERS_OF_TEN[-power] ?? 1) : mantissa * (POWERS_OF_TEN[power] ?? 1);
  return first > start && sign === MINUS ? -value : value;
}

/** Digits after the decimal sign of a plain number, its exponent counted in; 0 for whole numbers. */
export function decimalsOfPlain(bytes: Uint8Array, start: number, end: number, decimal: number): number {
  let point = -1;
  for (let pos = start; pos < end; pos++) {
    const c = bytes[pos] ?? 0;
    if (c === decimal) point = pos;
    else if (c === 69 || c === 101) {
      return Math.max(0, (point < 0 ? 0 : pos - point - 1) - exponentFrom(bytes, pos, end));
    }
  }
  return point < 0 ? 0 : end - point - 1;
}

/** The exponent that begins at `pos` with an e, or NaN. */
function exponentFrom(bytes: Uint8Array, pos: number, end: number): number {
  const letter = bytes[pos];
  if (letter !== 69 && letter !== 101) return Number.NaN;
  let at = pos + 1;
  const sign = bytes[at];
  if (sign === MINUS || sign === PLUS) at++;
  if (at === end || end - at > 4) return Number.NaN;
  let exponent = 0;
  for (; at < end; at++) {
    const d = (bytes[at] ?? 0) - ZERO;
    if (d < 0 || d > 9) return Number.NaN;
    exponent = exponent * 10 + d;
  }
  return sign === MINUS ? -exponent : exponent;
}

function slowNumber(bytes: Uint8Array, start: number, end: number, decimal: number): number {
  let text = '';
  for (let pos = start; pos < end; pos++) {
    const c = bytes[pos] ?? 0;
    text += String.fromCharCode(c === decimal ? POINT : c);
  }
  const value = Number(text);
  return Number.isFinite(value) ? value : Number.NaN;
}
