import type { TraceView } from '../../core/capture/traceView.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { endDrawn, firstDrawn } from './tracePath.ts';

/**
 * Lowest and highest value in sight, and how many entries carry them; infinite ends for none. A line that only passes
 * through, from an entry before the stretch to one after it, counts with both its ends.
 */
export interface SeenExtent {
  readonly low: number;
  readonly high: number;
  readonly entries: number;
}

/** The extent of some views inside a stretch of the axis; each view with what is added to its times. */
export function extentOf(
  views: readonly { readonly view: TraceView; readonly shiftS: number }[],
  stretch: Stretch,
): SeenExtent {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let entries = 0;
  for (const { view, shiftS } of views) {
    const startS = stretch.startS - shiftS;
    const endS = stretch.endS - shiftS;
    const first = firstDrawn(view.timesS, startS);
    const end = endDrawn(view.timesS, endS);
    const passes = end - first === 2 && (view.timesS[end - 1] ?? 0) - (view.timesS[first] ?? 0) <= view.gapS;
    for (let i = first; i < end; i++) {
      const timeS = view.timesS[i] ?? Number.NaN;
      if (!passes && (timeS < startS || timeS > endS)) continue;
      low = Math.min(low, view.low[i] ?? low);
      high = Math.max(high, view.high[i] ?? high);
      entries++;
    }
  }
  return { low, high, entries };
}
