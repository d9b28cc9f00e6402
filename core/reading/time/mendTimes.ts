// Puts the times of a file into ascending order, and says what it changed. Nothing is mended silently: each repair is a
// warning with its first row and a count, and a person may undo each.

import type { AsWritten } from '../../capture/repairs.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import { countJumps, joinSegments } from './joinSegments.ts';
import type { Mending } from './mending.ts';
import { type OrderedRows, orderAll, orderBy, orderNear } from './orderRows.ts';
import { spreadEqualTimes } from './spreadEqualTimes.ts';
import { type ClockTurn, unwrapClock } from './unwrapClock.ts';

export interface MendedTimes {
  /** Seconds, ascending, not yet counted from zero. */
  readonly timesS: Float64Array;
  /**
   * For each place in timesS the row it came from, or null where the order of the file was kept. Shorter than the file
   * where a person wants its order and rows that go back in time were left out.
   */
  readonly order: Uint32Array | null;
  readonly warnings: readonly CaptureWarning[];
}

/** How times are to be mended. */
export interface MendingRules {
  /** How a clock begins again, or null where times do not. */
  readonly clock: ClockTurn | null;
  /** True where equal times come from a coarse clock, and their rows are spread up to the next time. */
  readonly coarse: boolean;
  /** Repairs not to be made. */
  readonly asWritten: AsWritten;
  /** Line of a row for the warnings; null where rows have no lines. */
  rowOf(index: number): number | null;
}

/**
 * More jumps than this, and more than one in so many rows, are no jumps but rows in no order. Jumps to the start are not
 * counted: a file may hold any number of recordings, which must never be sorted into each other.
 */
const MOST_JUMPS = 8;
const ROWS_A_JUMP = 500;

/**
 * Mends `raw` seconds in the order of the file. NaN must not occur. `raw` may be changed. What reads as one recording is
 * found on the mended clock in any case; where a person has undone a repair of the clock, rows then move back to the
 * times that the file gives, and lie over each other in order of time.
 */
export function mendTimes(raw: Float64Array, rules: MendingRules): MendedTimes {
  const { clock, coarse, asWritten, rowOf } = rules;
  const mending: Mending = { asWritten, rowOf, warnings: [] };
  const placed = movesBack(asWritten) ? raw.slice() : null;
  if (clock !== null) unwrapClock(raw, placed, clock, mending);
  const joined = order(raw, placed, mending);
  const before = placed === null ? null : joined.timesS.slice();
  if (coarse) {
    const spread = spreadEqualTimes(
      joined.timesS,
      (place) => rowOf(joined.order?.[place] ?? place),
      asWritten.has('duplicateTimes'),
    );
    if (spread !== null) mending.warnings.push(spread);
  }
  const ordered = placed === null || before === null ? joined : laidOver(joined, before, placed);
  return { ...ordered, warnings: mending.warnings };
}

function movesBack(asWritten: AsWritten): boolean {
  return asWritten.has('clockPastMidnight') || asWritten.has('clockJumpedBack') || asWritten.has('secondRecording');
}

function order(raw: Float64Array, placed: Float64Array | null, mending: Mending): OrderedRows {
  let back = 0;
  for (let i = 1; i < raw.length; i++) if ((raw[i] ?? 0) < (raw[i - 1] ?? 0)) back++;
  if (back === 0) return { timesS: raw, order: null };
  if (back > raw.length * 0.4) return orderAll(raw, mending);
  const { restarts, others } = countJumps(raw);
  if (others > MOST_JUMPS && others * ROWS_A_JUMP > raw.length) return orderAll(raw, mending);
  if (restarts + others > 0) joinSegments(raw, placed, mending);
  return orderNear(raw, mending);
}

/** Rows at the times they were placed at, each moved by what spreading equal times moved it. */
function laidOver(joined: OrderedRows, before: Float64Array, placed: Float64Array): OrderedRows {
  const ownS = joined.timesS.map((timeS, place) => {
    const own = placed[joined.order?.[place] ?? place] ?? 0;
    const moved = timeS - (before[place] ?? 0);
    return moved === 0 ? own : own + moved;
  });
  return orderBy(ownS, joined);
}
