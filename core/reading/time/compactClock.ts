import { secondsOf } from '../timeForms/clockParts.ts';
import type { TimeForm } from '../timeForms/timeForm.ts';

const DIGITS = /^(\d{1,6})(?:[.,](\d{1,9}))?$/;

/**
 * Times of day without signs between their parts, as receivers of positions write them: 130530.2 is 13:05:30.2. They
 * look like numbers, so they are no time form; isCompactClock tells which columns hold them.
 */
export const compactClock: TimeForm = {
  id: 'compactClock',
  words: 'clock times without colons',
  kind: 'clock',
  examples: [
    ['130530.20', 47130.2],
    ['000001', 1],
    ['93000', 34200],
  ],
  parse(text) {
    const match = DIGITS.exec(text.trim());
    if (match?.[1] === undefined) return Number.NaN;
    const digits = Number(match[1]);
    const [hours, minutes, seconds] = [Math.floor(digits / 10_000), Math.floor(digits / 100) % 100, digits % 100];
    if (hours > 23 || minutes > 59 || seconds > 59) return Number.NaN;
    return secondsOf(hours, minutes, seconds, match[2] ?? '');
  },
};

/** Receivers head the column with UTC and nothing else; seconds of the day would be called seconds. */
const SAYS_SO = /hh?mm?ss|^\W*(?:utc|gps)(?:[\s_-]*time)?\W*$/i;

/**
 * Whether a column of numbers is such a clock: all of them can be, and either the heading says so, or the numbers jump
 * from 59 s over the 40 that a count of seconds would have gone through.
 */
export function isCompactClock(heading: string, cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '');
  const times = filled.map((cell) => compactClock.parse(cell));
  if (times.length < 3 || times.some(Number.isNaN)) return false;
  if (SAYS_SO.test(heading)) return true;
  const jump = filled.findIndex((cell, i) => i > 0 && Number(cell) - Number(filled[i - 1]) >= 40);
  return jump > 0 && Number(filled[jump - 1]) % 100 > 50 && (times[jump] ?? 0) - (times[jump - 1] ?? 0) <= 10;
}
