import type { TraceView } from '../../capture/traceView.ts';

/** Where values and times lie on the picture, px. */
export interface PaneMap {
  xOf(timeS: number): number;
  yOf(value: number): number;
}

/**
 * The trace as the data of an SVG path. Samples are joined by straight lines, or by steps where the instrument holds its
 * values; in an envelope each bucket is a stroke from its lowest to its highest sample, so no peak is lost. A gap longer
 * than the view's stays a gap; a sample between two gaps becomes a dot. An empty view gives an empty text.
 */
export function tracePath(view: TraceView, map: PaneMap): string {
  const pieces: string[] = [];
  let down = false;
  for (let i = 0; i < view.timesS.length; i++) {
    const timeS = view.timesS[i] ?? Number.NaN;
    const gapBefore = i === 0 || timeS - (view.timesS[i - 1] ?? Number.NaN) > view.gapS;
    const x = place(map.xOf(timeS));
    const low = place(map.yOf(view.low[i] ?? Number.NaN));
    const high = place(map.yOf(view.high[i] ?? Number.NaN));
    if (x === null || low === null || high === null) continue;
    // Down and up in turn, so that the stroke to the next bucket is a short one.
    const [first, second] = down ? [high, low] : [low, high];
    if (gapBefore) pieces.push(`M${x} ${first}`);
    else if (view.steps) pieces.push(`H${x}V${first}`);
    else pieces.push(`L${x} ${first}`);
    if (second !== first) {
      pieces.push(`V${second}`);
      down = !down;
    } else if (gapBefore) {
      pieces.push('h0.1');
    }
  }
  return pieces.join('');
}

/** A tenth of a pixel is as fine as print gets. */
function place(px: number): number | null {
  return Number.isFinite(px) ? Math.round(px * 10) / 10 : null;
}
