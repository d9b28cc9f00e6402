// How often a clock jumped back, and the words for it.

import type { Mending } from './mending.ts';

/** Silence put between two recordings in one file, s: longer than any gap a window may span. */
export const BETWEEN_RECORDINGS_S = 10;

/** What happened to the clock more than once, told once. */
export interface Jumps {
  readonly id: 'secondRecording' | 'clockJumpedBack';
  count: number;
  /** Index of the first row behind one. */
  first: number;
  /** Longest way back, s. */
  longestS: number;
}

/** The count of a kind of jump before any was found. */
export function noJumps(id: Jumps['id']): Jumps {
  return { id, count: 0, first: 0, longestS: 0 };
}

/** Counts one more jump, found at row `i`, by `backS` seconds. */
export function note(jumps: Jumps, i: number, backS: number): void {
  if (jumps.count === 0) jumps.first = i;
  jumps.count++;
  jumps.longestS = Math.max(jumps.longestS, backS);
}

/** Tells of all jumps of a kind in one warning, at the row behind the first; nothing where there was none. */
export function tellJumps(jumps: Jumps, { asWritten, rowOf, warnings }: Mending): void {
  const { id, count, first } = jumps;
  if (count === 0) return;
  const repaired = !asWritten.has(id);
  const detail = id === 'secondRecording' ? restartWords(count, repaired) : jumpWords(jumps, repaired);
  warnings.push({ id, detail, row: rowOf(first), count, repaired });
}

function restartWords(count: number, repaired: boolean): string {
  const [what, each] =
    count === 1
      ? ['Time starts again, so the file holds another recording', 'it was']
      : [`Time starts again ${count} times, so the file holds ${count + 1} recordings`, 'each was'];
  const follows = repaired
    ? `${each} put ${BETWEEN_RECORDINGS_S} s behind the one before`
    : 'all stand at the times the file gives, and a window may hold rows of several';
  return `${what}; ${follows}.`;
}

function jumpWords({ count, longestS }: Jumps, repaired: boolean): string {
  const by = Number(longestS.toPrecision(4));
  const what =
    count === 1 ? `The clock jumped back by ${by} s` : `The clock jumped back ${count} times, by up to ${by} s`;
  const follows = repaired ? 'were joined to those before' : 'stand at the times the file gives, among those before';
  return `${what}; the rows after it ${follows}.`;
}
