import { dayNumber, fullYear } from './clockParts.ts';
import type { TimeForm } from './timeForm.ts';

const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})([./-])(\d{1,2})\2(\d{2}|\d{4})$/;
const MONTH_NAME = /^(?:[A-Za-z]{3,9},?\s+)?(\d{1,2})[-\s.]+([A-Za-zäéû]{3,10})\.?[-\s.,]+(\d{2}|\d{4})$/;
const MONTH_FIRST = /^(?:[A-Za-z]{3,9},?\s+)?([A-Za-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/;
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const OTHER_MONTHS: Readonly<Record<string, number>> = {
  ...{ mär: 3, mrz: 3, mai: 5, okt: 10, dez: 12, fév: 2, fev: 2, avr: 4, aoû: 8, déc: 12 },
  ...{ ene: 1, abr: 4, ago: 8, dic: 12 },
};

/**
 * A day as instruments write it. With the year last and both other numbers up to 12, points mean day first and slashes
 * month first (common practice, no source); which of the two it is cannot change a duration within one day.
 */
export const localDate: TimeForm = {
  id: 'localDate',
  words: 'dates',
  kind: 'date',
  examples: [
    ['2024-02-29', 1709164800],
    ['29.02.2024', 1709164800],
    ['2/29/2024', 1709164800],
    ['29/02/24', 1709164800],
    ['29-Feb-2024', 1709164800],
    ['Feb 29, 2024', 1709164800],
  ],
  parse(text) {
    return dayOf(text.trim()) * 86400;
  },
};

/** Day number since 1970-01-01 of a day as instruments write it; NaN where the text names none. */
export function dayOf(text: string): number {
  const first = YEAR_FIRST.exec(text);
  if (first !== null) return dayNumber(Number(first[1]), Number(first[2]), Number(first[3]));
  const named = MONTH_NAME.exec(text);
  if (named !== null) return dayNumber(fullYear(Number(named[3])), monthOf(named[2] ?? ''), Number(named[1]));
  const monthFirst = MONTH_FIRST.exec(text);
  if (monthFirst !== null) return dayNumber(Number(monthFirst[3]), monthOf(monthFirst[1] ?? ''), Number(monthFirst[2]));
  const last = YEAR_LAST.exec(text);
  if (last === null) return Number.NaN;
  const a = Number(last[1]);
  const b = Number(last[3]);
  const year = fullYear(Number(last[4]));
  const dayFirst = a > 12 || (b <= 12 && last[2] !== '/');
  return dayFirst ? dayNumber(year, b, a) : dayNumber(year, a, b);
}

function monthOf(name: string): number {
  const short = name.slice(0, 3).toLowerCase();
  return OTHER_MONTHS[short] ?? MONTHS.indexOf(short) + 1;
}
