import type { Mending } from './mending.ts';

/** How a clock begins again at 0. */
export interface ClockTurn {
  readonly lengthS: number;
  /** A clock that goes back by more has begun again. */
  readonly backS: number;
  readonly words: string;
  readonly next: string;
}

/** Times of day. */
export const DAY: ClockTurn = { lengthS: 86_400, backS: 43_200, words: 'midnight', next: 'day' };
/** Minutes and seconds of a clock whose hours are not shown, as spreadsheets cut them; only from the last minute on. */
export const HOUR: ClockTurn = { lengthS: 3600, backS: 3540, words: 'the full hour', next: 'hour' };

/**
 * Adds a turn of the clock to times, s, behind each midnight or full hour, in place. A late row from before it keeps its day. `placed`
 * gets the same unless a person wants the clock as it was written.
 */
export function unwrapClock(
  raw: Float64Array,
  placed: Float64Array | null,
  { lengthS, backS, words, next }: ClockTurn,
  { asWritten, rowOf, warnings }: Mending,
): void {
  const undone = asWritten.has('clockPastMidnight');
  let turns = 0;
  let first = -1;
  let previous = raw[0] ?? 0;
  for (let i = 1; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    if (value < previous - backS) {
      turns++;
      if (first < 0) first = i;
    } else if (value > previous + backS && turns > 0) turns--;
    previous = value;
    raw[i] = value + turns * lengthS;
    if (placed !== null && !undone) placed[i] = raw[i] ?? 0;
  }
  if (first < 0) return;
  const follows = undone
    ? `its times stand as it wrote them, so the rows after ${words} lie before the others.`
    : `times go on into the next ${next}.`;
  warnings.push({
    id: 'clockPastMidnight',
    detail: `The clock passed ${words}; ${follows}`,
    row: rowOf(first),
    count: 1,
    repaired: !undone,
  });
}
