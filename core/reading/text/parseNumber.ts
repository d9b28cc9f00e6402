// Numbers as text. The rule for every path of the reader: a plain decimal number gives the very bits that JavaScript's
// own Number() gives for it; anything else is not a number here, even where Number() would take it (hex, empty, Infinity).

export type DecimalSign = '.' | ',';

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,4})?$/;
/** Groups of three, never after a leading zero: 1,234,567.8 or 1.234,5 or 12 345 or 1'234. */
const GROUPED = /^[+-]?[1-9]\d{0,2}(?:([.,'’\u00A0\u202F ])\d{3})(?:\1\d{3})*(?:([.,])\d+)?$/;

/**
 * The number a cell holds, or NaN. `decimal` is the file's decimal sign. Blanks around it are ignored. A minus sign may
 * be the typographic one.
 */
export function parseNumber(cell: string, decimal: DecimalSign): number {
  const text = cell.trim().replace(/^[\u2212\u2013]/, '-');
  if (text === '') return Number.NaN;
  const plain = decimal === ',' ? text.replace(',', '.') : text;
  if (PLAIN.test(plain) && !(decimal === ',' && text.includes('.'))) return finite(plain);
  return parseGrouped(text, decimal);
}

/**
 * A number with thousands separators, or NaN. The sign that is not the decimal sign may group; a single group of three
 * is taken as grouping only then: with a decimal comma, 1.234 is one thousand two hundred and thirty-four.
 */
export function parseGrouped(text: string, decimal: DecimalSign): number {
  const match = GROUPED.exec(text);
  if (match === null || match[1] === decimal || match[2] === match[1]) {
    return parseOther(text, decimal);
  }
  if (match[2] !== undefined && match[2] !== decimal) return Number.NaN;
  const group = match[1] ?? '';
  return finite(text.split(group).join('').replace(',', '.'));
}

/** The other decimal sign where it cannot be grouping: 0.45 in a file of decimal commas, 0,45 in one of points. */
function parseOther(text: string, decimal: DecimalSign): number {
  const other = decimal === '.' ? ',' : '.';
  if (text.includes(decimal) || text.split(other).length !== 2) return Number.NaN;
  const plain = text.replace(',', '.');
  return PLAIN.test(plain) ? finite(plain) : Number.NaN;
}

/** 1e999 is a number to a reader and none to a computer. */
function finite(text: string): number {
  const value = Number(text);
  return Number.isFinite(value) ? value : Number.NaN;
}

/** How many digits a plain number has after its decimal sign, its exponent counted in; 0 for whole numbers. */
export function decimalsOf(cell: string): number {
  const match = /[.,](\d*)(?:[eE]([+-]?\d+))?$|[eE]([+-]?\d+)$/.exec(cell.trim());
  if (match === null) return 0;
  const exponent = Number(match[2] ?? match[3] ?? 0);
  return Math.max(0, (match[1] ?? '').length - exponent);
}
