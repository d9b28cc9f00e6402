// Cells of a delimited file: RFC 4180 quoting, and text that no spreadsheet runs (OWASP CSV Injection; ASVS 1.2.10).

import type { DecimalSign } from '../sheet.ts';

/** A number goes bare, text is made safe, null is an empty cell. */
export type CsvValue = number | string | null;

/** What a spreadsheet takes for the start of a formula, full-width twins included, and control characters. */
const STARTS_FORMULA = /^[\s\p{Cc}]*[=+\-@＝＋－＠]|^ *\p{Cc}/u;

/** Byte order mark: tells a spreadsheet that the text is UTF-8. */
export const UTF8_MARK = '\ufeff';

/** The separator that goes with a decimal sign: a comma cannot be both. */
export function separatorFor(sign: DecimalSign): ',' | ';' {
  return sign === ',' ? ';' : ',';
}

/** Rows as a delimited file, each ended by CR LF. The first row is the head. */
export function csvText(rows: readonly (readonly CsvValue[])[], sign: DecimalSign): string {
  const separator = separatorFor(sign);
  return rows.map((row) => `${row.map((value) => csvCell(value, sign)).join(separator)}\r\n`).join('');
}

/**
 * One cell. A finite number is written with a point or comma and no groups; one that is not finite is an empty cell.
 * Text that would start a formula gets an apostrophe in front, also behind a line end or behind a sign that separates
 * cells for a reader who opens the file with another separator.
 */
export function csvCell(value: CsvValue, sign: DecimalSign): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value).replace('.', sign) : '';
  const safe = harmless(value, separatorFor(sign));
  return /[",;\t\r\n]|^\s|\s$|^'/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function harmless(text: string, own: ',' | ';'): string {
  const inner = own === ',' ? INSIDE_COMMA_FILE : INSIDE_SEMICOLON_FILE;
  const broken = text.replace(inner, "$1'");
  return STARTS_FORMULA.test(broken) ? `'${broken}` : broken;
}

const INSIDE_COMMA_FILE = /([;\t\r\n]["\s]*)(?=[=+\-@＝＋－＠])/gu;
const INSIDE_SEMICOLON_FILE = /([,\t\r\n]["\s]*)(?=[=+\-@＝＋－＠])/gu;
