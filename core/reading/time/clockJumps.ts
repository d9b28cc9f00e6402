// How often a clock jumped back, and the words for it.

import type { CaptureWarning } from '../../capture/warnings.ts';

/** Silence put between two recordings in one file, s: longer than any gap a window may span. */
export const BETWEEN_RECORDINGS_S = 10;

/** What happened to the clock more than once, told once. */
export interface Jumps {
  count: number;
  /** Index of the first row behind one. */
  first: number;
  /** Longest way back, s. */
  longestS: number;
}

/** Counts one more jump, found at row `i`, by `backS` seconds. */
export function note(jumps: Jumps, i: number, backS: number): void {
  if (jumps.count === 0) jumps.first = i;
  jumps.count++;
  jumps.longestS = Math.max(jumps.longestS, backS);
}

/** What is said of a file whose time starts again `count` times. */
export function restartWords(count: number): string {
  const what =
    count === 1
      ? 'Time starts again, so the file holds another recording; it was'
      : `Time starts again ${count} times, so the file holds ${count + 1} recordings; each was`;
  return `${what} put ${BETWEEN_RECORDINGS_S} s behind the one before.`;
}

/** What is said of a clock that jumped back. */
export function jumpWords({ count, longestS }: Jumps): string {
  const by = Number(longestS.toPrecision(4));
  const what =
    count === 1 ? `The clock jumped back by ${by} s` : `The clock jumped back ${count} times, by up to ${by} s`;
  return `${what}; the rows after it were joined to those before.`;
}

/** The one warning for all jumps of a kind, at the row behind the first. */
export function jumpWarning(
  id: 'secondRecording' | 'clockJumpedBack',
  detail: string,
  { count, first }: Jumps,
  rowOf: (i: number) => number | null,
): CaptureWarning {
  return { id, detail, row: rowOf(first), count, repaired: true };
}
