// Puts the times of a file into ascending order, and says what it changed. Nothing is mended silently: each repair is a
// warning with its first row and a count.

import type { CaptureWarning } from '../../capture/warnings.ts';
import { BETWEEN_RECORDINGS_S, type Jumps, jumpWarning, jumpWords, note, restartWords } from './clockJumps.ts';

export interface MendedTimes {
  /** Seconds, ascending, not yet counted from zero. */
  readonly timesS: Float64Array;
  /** For each place in timesS the row it came from, or null where the order of the file was kept. */
  readonly order: Uint32Array | null;
  readonly warnings: readonly CaptureWarning[];
}

/** So many rows in a row may come late, as instruments with several buffers write them; more are a jump of the clock. */
const LATE_ROWS = 8;
/** More jumps than this, and more than one in so many rows, are no jumps but rows in no order. */
const MOST_JUMPS = 8;
const ROWS_A_JUMP = 500;
const HALF_DAY_S = 43200;

/**
 * Mends `raw` seconds in the order of the file; `rowOf` gives the line of a row for the warnings. `clock` is true for
 * times of day, which start again at midnight. NaN must not occur. `raw` may be changed.
 */
export function mendTimes(raw: Float64Array, clock: boolean, rowOf: (index: number) => number | null): MendedTimes {
  const warnings: CaptureWarning[] = [];
  if (clock) unwrapMidnight(raw, rowOf, warnings);
  let back = 0;
  for (let i = 1; i < raw.length; i++) if ((raw[i] ?? 0) < (raw[i - 1] ?? 0)) back++;
  if (back === 0) return { timesS: raw, order: null, warnings };
  if (back > raw.length * 0.4) return sorted(raw, rowOf, warnings);
  const jumps = countJumps(raw);
  if (jumps > MOST_JUMPS && jumps * ROWS_A_JUMP > raw.length) return sorted(raw, rowOf, warnings);
  if (jumps > 0) joinSegments(raw, rowOf, warnings);
  return sortNear(raw, rowOf, warnings);
}

function countJumps(raw: Float64Array): number {
  let jumps = 0;
  let highest = raw[0] ?? 0;
  for (let i = 1; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    if (value >= highest) highest = value;
    else if (isJump(raw, i, highest)) {
      jumps++;
      highest = value;
    }
  }
  return jumps;
}

function unwrapMidnight(raw: Float64Array, rowOf: (i: number) => number | null, warnings: CaptureWarning[]): void {
  let days = 0;
  let first = -1;
  let previous = raw[0] ?? 0;
  for (let i = 1; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    if (value < previous - HALF_DAY_S) {
      days++;
      if (first < 0) first = i;
    } else if (value > previous + HALF_DAY_S && days > 0) days--;
    previous = value;
    raw[i] = value + days * 86400;
  }
  if (first < 0) return;
  warnings.push({
    id: 'clockPastMidnight',
    detail: 'The clock passed midnight; times go on into the next day.',
    row: rowOf(first),
    count: 1,
    repaired: true,
  });
}

/** Moves everything behind a jump back of the clock so that time goes on from where it was. */
function joinSegments(raw: Float64Array, rowOf: (i: number) => number | null, warnings: CaptureWarning[]): void {
  let shift = 0;
  const start = raw[0] ?? 0;
  let highest = start;
  const step = typicalStep(raw);
  const restarts: Jumps = { count: 0, first: 0, longestS: 0 };
  const jumps: Jumps = { count: 0, first: 0, longestS: 0 };
  for (let i = 1; i < raw.length; i++) {
    const value = (raw[i] ?? 0) + shift;
    if (value < highest && isJump(raw, i, highest - shift)) {
      const own = raw[i] ?? 0;
      const near = Math.max(1, 3 * step);
      const again = Math.abs(own - start) <= near || Math.abs(own) <= near;
      shift = highest + (again ? BETWEEN_RECORDINGS_S : step) - own;
      note(again ? restarts : jumps, i, highest - value);
    }
    const moved = (raw[i] ?? 0) + shift;
    raw[i] = moved;
    if (moved > highest) highest = moved;
  }
  if (restarts.count > 0) warnings.push(jumpWarning('secondRecording', restartWords(restarts.count), restarts, rowOf));
  if (jumps.count > 0) warnings.push(jumpWarning('clockJumpedBack', jumpWords(jumps), jumps, rowOf));
}

/** True where the rows from `i` on stay behind the highest time so far for longer than rows come late. */
function isJump(raw: Float64Array, i: number, highest: number): boolean {
  const end = Math.min(raw.length, i + LATE_ROWS);
  for (let k = i + 1; k < end; k++) if ((raw[k] ?? 0) >= highest) return false;
  // At the end of the file late rows are told by belonging between the last ones.
  return end - i >= LATE_ROWS || i < LATE_ROWS || (raw[i] ?? 0) < (raw[i - LATE_ROWS] ?? 0);
}

function typicalStep(raw: Float64Array): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(raw.length / 2000));
  for (let i = 1; i < raw.length; i += stride) {
    const step = (raw[i] ?? 0) - (raw[i - 1] ?? 0);
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] ?? 1;
}

/** Stable insertion of late rows, which have only a few rows to go back. */
function sortNear(raw: Float64Array, rowOf: (i: number) => number | null, warnings: CaptureWarning[]): MendedTimes {
  let order: Uint32Array | null = null;
  let late = 0;
  let first = -1;
  for (let i = 1; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    let k = i;
    while (k > 0 && (raw[k - 1] ?? 0) > value) {
      order ??= Uint32Array.from(raw, (_, n) => n);
      raw[k] = raw[k - 1] ?? 0;
      order[k] = order[k - 1] ?? 0;
      k--;
    }
    if (k === i || order === null) continue;
    raw[k] = value;
    order[k] = i;
    late++;
    if (first < 0) first = i;
  }
  if (late > 0)
    warnings.push(
      orderWarning(late, rowOf(first), `${late} ${late === 1 ? 'row was' : 'rows were'} put in order of time.`),
    );
  return { timesS: raw, order, warnings };
}

/** A file written newest first, or in no order at all. */
function sorted(raw: Float64Array, rowOf: (i: number) => number | null, warnings: CaptureWarning[]): MendedTimes {
  const order = Uint32Array.from(raw, (_, n) => n);
  // Reversed first, so that rows of equal time in a file written newest first come out in the order they were taken.
  if ((raw[0] ?? 0) > (raw[raw.length - 1] ?? 0)) order.reverse();
  order.sort((a, b) => (raw[a] ?? 0) - (raw[b] ?? 0));
  const timesS = Float64Array.from(order, (row) => raw[row] ?? 0);
  warnings.push(orderWarning(raw.length, rowOf(1), 'The rows were not in order of time; all were sorted.'));
  return { timesS, order, warnings };
}

function orderWarning(count: number, row: number | null, detail: string): CaptureWarning {
  return { id: 'outOfOrder', detail, row, count, repaired: true };
}
