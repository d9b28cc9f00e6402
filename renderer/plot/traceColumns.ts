// A dense trace as columns: every entry is an upright bar as wide as the pen, and bars that do not touch are stretched until
// they meet. Bars cost the same whatever the trace does, where the outline of a thousand steep strokes costs the most just
// where there is the most to see.

import type { TraceView } from '../../core/capture/traceView.ts';
import type { PaperMap, TraceWish } from './tracePath.ts';

export interface ColumnSink {
  rect(x: number, y: number, width: number, height: number): void;
}

/** A bar that waits for its successor, because the two may have to be stretched towards each other. */
interface Bar {
  x: number;
  top: number;
  bottom: number;
}

const waiting: Bar = { x: 0, top: 0, bottom: 0 };
const next: Bar = { x: 0, top: 0, bottom: 0 };

/** Adds the entries from `first` up to `end` to `columns`. `pitch` is the usual distance of two entries, canvas px. */
export function columnsOf(
  view: TraceView,
  first: number,
  end: number,
  pitch: number,
  map: PaperMap,
  wish: TraceWish,
  columns: ColumnSink,
): void {
  const width = Math.max(wish.thickness, pitch);
  let isWaiting = false;
  let lastS = Number.NEGATIVE_INFINITY;
  for (let i = first; i < end; i++) {
    const timeS = view.timesS[i] ?? Number.NaN;
    const cut = isCut(view, i, map, wish);
    if (isWaiting && (cut || timeS - lastS > view.gapS)) {
      put(waiting, width, wish.thickness, columns);
      isWaiting = false;
    }
    lastS = timeS;
    if (cut) continue;
    place(next, view, i, map, wish);
    if (isWaiting) {
      meet(waiting, next, view.steps);
      put(waiting, width, wish.thickness, columns);
    }
    waiting.x = next.x;
    waiting.top = next.top;
    waiting.bottom = next.bottom;
    isWaiting = true;
  }
  if (isWaiting) put(waiting, width, wish.thickness, columns);
}

/**
 * Whether entry `i` falls into the gap of a broken line. Gaps are counted from second 0, so that they move with the trace.
 * Where the trace rises or falls by more than the pen it is never cut, or a stroke or a peak could be lost.
 */
function isCut(view: TraceView, i: number, map: PaperMap, wish: TraceWish): boolean {
  const [on = 0, off = 0] = wish.dash;
  if (off === 0) return false;
  const along = ((view.timesS[i] ?? Number.NaN) + wish.shiftS) * ((map.right - map.left) / (map.endS - map.startS));
  const phase = along % (on + off);
  if ((phase < 0 ? phase + on + off : phase) < on) return false;
  const { low, high } = view;
  const before = Math.max(0, i - 1);
  const after = Math.min(low.length - 1, i + 1);
  const least = Math.min(low[before] ?? 0, low[i] ?? 0, low[after] ?? 0);
  const most = Math.max(high[before] ?? 0, high[i] ?? 0, high[after] ?? 0);
  return ((most - least) * (map.bottom - map.top)) / (map.high - map.low) <= wish.thickness;
}

function place(bar: Bar, view: TraceView, i: number, map: PaperMap, wish: TraceWish): void {
  const perS = (map.right - map.left) / (map.endS - map.startS);
  const perValue = (map.bottom - map.top) / (map.high - map.low);
  bar.x = map.left + ((view.timesS[i] ?? Number.NaN) + wish.shiftS - map.startS) * perS;
  bar.top = map.bottom - ((view.high[i] ?? Number.NaN) - map.low) * perValue;
  bar.bottom = map.bottom - ((view.low[i] ?? Number.NaN) - map.low) * perValue;
}

/** Stretches two neighbours until they touch: half way each, or the later alone where the instrument holds its values. */
function meet(before: Bar, after: Bar, steps: boolean): void {
  if (after.top > before.bottom) {
    const middle = steps ? before.bottom : (after.top + before.bottom) / 2;
    after.top = middle;
    before.bottom = middle;
  } else if (after.bottom < before.top) {
    const middle = steps ? before.top : (after.bottom + before.top) / 2;
    after.bottom = middle;
    before.top = middle;
  }
}

function put(bar: Bar, width: number, thickness: number, columns: ColumnSink): void {
  columns.rect(bar.x - width / 2, bar.top - thickness / 2, width, bar.bottom - bar.top + thickness);
}
