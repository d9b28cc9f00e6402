// The handle of the strip as arithmetic: what the visible stretch becomes when it is dragged or moved by keys.

import type { Stretch } from '../../core/windows/window.ts';
import { type Edge, withEdge } from './windowEdges.ts';
import { panBy, type ZoomLimits, zoomAt } from './zoom.ts';

/** The visible stretch with an edge, or the whole of it, moved by `byS`. */
export function viewByGrip(visible: Stretch, grip: Edge | 'body', byS: number, limits: ZoomLimits): Stretch {
  if (grip === 'body') return panBy(visible, byS, limits);
  return withEdge(visible, grip, visible[grip === 'start' ? 'startS' : 'endS'] + byS, limits, limits.leastSpanS);
}

/** Keys of the handle: arrows by a tenth of the view or a pixel of the strip, Page by the view, Home and End, + and −. */
export function viewByKey(
  key: string,
  grip: Edge | 'body',
  visible: Stretch,
  limits: ZoomLimits,
  pixelS: number,
): Stretch | null {
  const span = visible.endS - visible.startS;
  const whole = limits.endS - limits.startS;
  const small = grip === 'body' ? span / 10 : pixelS;
  const large = grip === 'body' ? span : 10 * pixelS;
  const ways: Readonly<Record<string, number>> = {
    ArrowLeft: -small,
    ArrowDown: -small,
    ArrowRight: small,
    ArrowUp: small,
    PageUp: -large,
    PageDown: large,
    Home: -whole,
    End: whole,
  };
  const byS = ways[key];
  if (byS !== undefined) return viewByGrip(visible, grip, byS, limits);
  const middleS = (visible.startS + visible.endS) / 2;
  if (key === '+' || key === '=') return zoomAt(visible, middleS, 1 / 1.5, limits);
  return key === '-' || key === '−' ? zoomAt(visible, middleS, 1.5, limits) : null;
}
