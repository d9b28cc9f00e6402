// Jumps back of a clock: where they are, and how what lies behind one is joined to what lies before.

import { BETWEEN_RECORDINGS_S, noJumps, note, tellJumps } from './clockJumps.ts';
import type { Mending } from './mending.ts';

/** So many rows in a row may come late, as instruments with several buffers write them; more are a jump of the clock. */
const LATE_ROWS = 8;

/** Fewer rows before the clock starts again are no recording, but rows in no order. */
const LEAST_ROWS = 20;

/** Jumps back of the clock in `raw`, s in the order of the file: to its start behind a recording, and all others. */
export function countJumps(raw: Float64Array): { readonly restarts: number; readonly others: number } {
  let restarts = 0;
  let others = 0;
  let highest = raw[0] ?? 0;
  let begun = 0;
  const start = highest;
  const near = nearStart(typicalStep(raw));
  for (let i = 1; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    if (value >= highest) highest = value;
    else if (isJump(raw, i, highest)) {
      if (startsAgain(value, start, near) && i - begun >= LEAST_ROWS) restarts++;
      else others++;
      highest = value;
      begun = i;
    }
  }
  return { restarts, others };
}

/** How near its start, s, a clock must land to have started again. */
function nearStart(step: number): number {
  return Math.max(1, 3 * step);
}

function startsAgain(timeS: number, startS: number, near: number): boolean {
  return Math.abs(timeS - startS) <= near || Math.abs(timeS) <= near;
}

/**
 * Moves everything behind a jump back of the clock so that time goes on from where it was, in place. `placed`, which has
 * the times without the repairs that a person has undone, is moved by the other ones only.
 */
export function joinSegments(raw: Float64Array, placed: Float64Array | null, mending: Mending): void {
  const { asWritten } = mending;
  const start = raw[0] ?? 0;
  const step = typicalStep(raw);
  const near = nearStart(step);
  const restarts = noJumps('secondRecording');
  const jumps = noJumps('clockJumpedBack');
  let shift = 0;
  let highest = start;
  let placedShift = 0;
  let placedHighest = placed?.[0] ?? 0;
  for (let i = 1; i < raw.length; i++) {
    const own = raw[i] ?? 0;
    const value = own + shift;
    if (value < highest && isJump(raw, i, highest - shift)) {
      const again = startsAgain(own, start, near);
      const joined = highest + (again ? BETWEEN_RECORDINGS_S : step) - own;
      const ahead = placedShift + (joined - shift);
      if (!again) placedShift = asWritten.has('clockJumpedBack') ? placedShift : ahead;
      else if (asWritten.has('secondRecording')) placedShift = 0;
      // Behind all that lies there, also where rows behind an undone jump lie further back than those before it.
      else placedShift = Math.max(ahead, placedHighest + BETWEEN_RECORDINGS_S - (placed?.[i] ?? 0));
      shift = joined;
      note(again ? restarts : jumps, i, highest - value);
    }
    raw[i] = own + shift;
    highest = Math.max(highest, own + shift);
    if (placed === null) continue;
    placed[i] = (placed[i] ?? 0) + placedShift;
    placedHighest = Math.max(placedHighest, placed[i] ?? 0);
  }
  tellJumps(restarts, mending);
  tellJumps(jumps, mending);
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
