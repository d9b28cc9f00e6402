// Numbers as people read them on screen. The rules are those of the evidence sheet, with a point as decimal sign wherever
// the reader lives: the sentences of the core (details of conditions, reasons, findings) are written with one. They are kept in
// records, signed and printed by the headless command, the same on every machine; a comma beside them would be two languages
// on one page.

import { digitsFor, KEPT_SPACE, probabilityWords, showNumber } from '../../core/evidence/words/numbers.ts';

export { KEPT_SPACE, probabilityWords };

/** "0.45", "−3.1", "12 400". `digits` is the count after the decimal sign. */
export function numberWords(value: number, digits: number): string {
  return showNumber(value, digits, '.');
}

/** "88 °C", "0.45 V"; a pure number (unit '1') stands alone. */
export function withUnit(value: number, unit: string, digits: number): string {
  return unit === '1' || unit === '' ? numberWords(value, digits) : `${numberWords(value, digits)}${KEPT_SPACE}${unit}`;
}

/** A sentence of the core in which no number is parted from its unit at the end of a line. */
export function keptTogether(sentence: string): string {
  return sentence.replace(/(\d) (?=(?:%|°C|°F|K|V|mV|g|g\/s|s|ms|min|Hz|1\/min)(?![\p{L}\d/]))/gu, `$1${KEPT_SPACE}`);
}

/** A measured value with as many digits as its interval deserves, and the interval with the same; most `digits`. */
export function measuredWords(value: number, interval: readonly [number, number] | null, digits: number) {
  if (interval === null) return { value: numberWords(value, digits), interval: null };
  const deserved = digitsFor((interval[1] - interval[0]) / 2, digits);
  const ends = `${numberWords(interval[0], deserved)} to ${numberWords(interval[1], deserved)}`;
  return { value: numberWords(value, deserved), interval: ends };
}

/** A signed difference: "+12", "−3.1", "0". */
export function differenceWords(value: number, digits: number): string {
  const words = numberWords(value, digits);
  return value > 0 && Number(value.toFixed(digits)) !== 0 ? `+${words}` : words;
}

/** "128,400": a comma before three digits parts thousands for one reader and decimals for another. */
const EITHER_WAY = /^[+-]?[1-9]\d{0,2},\d{3}$/;
/** "1.250": a point does so where nobody writes three decimals. */
const EITHER_WAY_MONEY = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/** The two readings of a number that different people read differently, for them to choose; null for all others. */
export function bothReadings(typed: string, money = false): readonly [thousands: string, decimals: string] | null {
  const plain = typed.trim().replace('−', '-');
  if (!(money ? EITHER_WAY_MONEY : EITHER_WAY).test(plain)) return null;
  const decimals = plain.replace(',', '.');
  return [plain.replace(/[.,]/, ''), money ? String(Number(decimals)) : decimals];
}

/** What a person typed as a number, with either decimal sign; null where it is none. Groups of digits are not read. */
export function typedNumber(typed: string): number | null {
  const plain = typed.trim().replace('−', '-').replace(',', '.');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}

/** "1.4 MB", "820 kB"; powers of ten, as files are sold and sent. */
export function bytesWords(bytes: number): string {
  if (bytes < 1000) return withUnit(bytes, 'B', 0);
  if (bytes < 1_000_000) return withUnit(bytes / 1000, 'kB', 0);
  if (bytes < 1_000_000_000) return withUnit(bytes / 1_000_000, 'MB', 1);
  return withUnit(bytes / 1_000_000_000, 'GB', 2);
}

/** "1 window", "2 windows": the word with an s, or the plural that is given. */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${numberWords(count, 0)}${KEPT_SPACE}${count === 1 ? one : many}`;
}
