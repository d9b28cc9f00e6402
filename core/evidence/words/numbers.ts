// Numbers as a sheet prints them: the decimal sign of the reader's country, groups of three with a space from five digits
// on (22nd CGPM, resolution 10), a true minus sign, a space before the unit (NIST SP 811, 7.2).

import type { Cell, DecimalSign } from '../sheet.ts';

/** A space that keeps a number and its unit on one line. */
export const KEPT_SPACE = '\u00a0';

/** "0,45", "−3.1", "12 400". `digits` after the decimal sign, 0 to 20. A value that is not finite throws. */
export function showNumber(value: number, digits: number, sign: DecimalSign): string {
  if (!Number.isFinite(value)) throw new RangeError('only finite numbers can be shown');
  const fixed = Math.abs(value).toFixed(digits);
  const negative = value < 0 && Number(fixed) !== 0;
  const [whole = '0', part] = fixed.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, KEPT_SPACE) : whole;
  return `${negative ? '−' : ''}${grouped}${part === undefined ? '' : sign + part}`;
}

/**
 * Digits after the decimal sign that a value with this uncertainty deserves: the uncertainty in one digit, in two where
 * the first is a 1 (as CODATA and the PDG round, so that rounding loses little), never more than `most`. An uncertainty
 * of 0 says that nothing is known about it and gives `most`.
 */
export function digitsFor(halfWidth: number, most: number): number {
  if (!(halfWidth > 0) || !Number.isFinite(halfWidth)) return most;
  const place = Math.floor(Math.log10(halfWidth));
  const leading = Number((halfWidth / 10 ** place).toPrecision(3));
  const digits = leading < 2 ? 1 - place : -place;
  return Math.min(most, Math.max(0, digits));
}

/** The fewest digits, up to `most`, that give the value back exactly; `most` where none do. For typed and marked times. */
export function digitsOf(value: number, most: number): number {
  for (let digits = 0; digits < most; digits++) if (Number(value.toFixed(digits)) === value) return digits;
  return most;
}

/**
 * A number cell, rounded to what is shown: no format of the sheet is more exact than another. `unit` null where the
 * column's head has it; '1' is a pure number and is not written.
 */
export function numberCell(value: number, digits: number, unit: string | null, sign: DecimalSign): Cell {
  const written = unit === '1' || unit === '' ? null : unit;
  return {
    kind: 'number',
    value: Number(value.toFixed(digits)),
    shown: showNumber(value, digits, sign),
    unit: written,
  };
}

/** A number cell, or a cell that says "not recorded". */
export function numberOrNone(value: number | null, digits: number, unit: string | null, sign: DecimalSign): Cell {
  return value === null ? NOT_RECORDED : numberCell(value, digits, unit, sign);
}

/** A text cell; an empty text says "not recorded". */
export function textCell(text: string): Cell {
  return text.trim() === '' ? NOT_RECORDED : { kind: 'text', text };
}

export const NOT_RECORDED: Cell = { kind: 'none', words: 'not recorded' };

/** "97 %" of a probability; never 0 or 100, which no evidence gives. */
export function probabilityWords(probability: number): string {
  if (probability < 0.01) return `under 1${KEPT_SPACE}%`;
  if (probability > 0.99) return `over 99${KEPT_SPACE}%`;
  return `${Math.round(probability * 100)}${KEPT_SPACE}%`;
}
