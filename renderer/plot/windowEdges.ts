// Edges of a window as things to grab: where their zones lie, and how far an edge may go.

import type { Stretch } from '../../core/windows/window.ts';

/** Width of the zone in which an edge can be grabbed, px; drawn it is one or two. */
export const GRAB_PX = 24;

export interface EdgeZones {
  /** Left end of each zone, px; both are GRAB_PX wide. */
  readonly start: number;
  readonly end: number;
}

/**
 * Zones around both edges that never cover each other, and leave `clearPx` free between them where there is something
 * to grab, too: in a narrow window they move outwards.
 */
export function edgeZones(startX: number, endX: number, clearPx = 0): EdgeZones {
  const room = Math.max(0, endX - startX - clearPx);
  const inside = Math.min(GRAB_PX / 2, room / 2);
  return { start: startX - (GRAB_PX - inside), end: endX - inside };
}

export type Edge = 'start' | 'end';

/** The stretch with one edge at `timeS`: the edges limit each other, and the capture limits both. */
export function withEdge(stretch: Stretch, edge: Edge, timeS: number, limits: Stretch, leastS: number): Stretch {
  if (edge === 'start') {
    const startS = Math.max(limits.startS, Math.min(timeS, stretch.endS - leastS));
    return { startS, endS: stretch.endS };
  }
  const endS = Math.min(limits.endS, Math.max(timeS, stretch.startS + leastS));
  return { startS: stretch.startS, endS };
}

/** The stretch moved as a whole, stopped by the ends of the capture. */
export function withStart(stretch: Stretch, startS: number, limits: Stretch): Stretch {
  const spanS = stretch.endS - stretch.startS;
  const held = Math.max(limits.startS, Math.min(startS, limits.endS - spanS));
  return { startS: held, endS: held + spanS };
}

/** Where a key moves an edge to, or null for a key that is none of the slider's. `stepS` is one pixel of time. */
export function edgeKeyTime(
  key: { readonly key: string; readonly shiftKey: boolean },
  timeS: number,
  stepS: number,
  range: Stretch,
): number | null {
  const fast = key.shiftKey ? 10 : 1;
  switch (key.key) {
    case 'ArrowLeft':
    case 'ArrowDown':
      return Math.max(range.startS, timeS - stepS * fast);
    case 'ArrowRight':
    case 'ArrowUp':
      return Math.min(range.endS, timeS + stepS * fast);
    case 'PageDown':
      return Math.max(range.startS, timeS - stepS * 50);
    case 'PageUp':
      return Math.min(range.endS, timeS + stepS * 50);
    case 'Home':
      return range.startS;
    case 'End':
      return range.endS;
    default:
      return null;
  }
}

/** The window under a time: the selected one if it is there, else the shortest, so that none is out of reach. */
export function windowAt<T extends Stretch & { readonly id: string }>(
  windows: readonly T[],
  timeS: number,
  selectedId: string | null,
): T | null {
  const here = windows.filter((window) => window.startS <= timeS && timeS <= window.endS);
  const selected = here.find((window) => window.id === selectedId);
  if (selected !== undefined) return selected;
  return here.reduce<T | null>((best, window) => (best === null || span(window) < span(best) ? window : best), null);
}

function span(stretch: Stretch): number {
  return stretch.endS - stretch.startS;
}
