// Dragging a window by an edge or as a whole, and moving it by keys: one start, any number of moves, one end, so that it
// is one step to undo; or abandoned, and nothing has happened.

import type { PointerEvent as ReactPointerEvent } from 'react';
import { followPointer } from './followPointer.ts';
import type { Stage } from './stage.ts';
import type { ShownWindow, WindowDrag } from './traceStackProps.ts';
import { type Edge, edgeKeyTime, withEdge, withStart } from './windowEdges.ts';
import type { ZoomLimits } from './zoom.ts';

export type Grip = Edge | 'body';

/** Pixels a pointer may tremble before a press becomes a drag. */
const TREMBLE_PX = 3;

export interface DragSetting {
  readonly stage: Stage;
  readonly limits: ZoomLimits;
  onWindowDrag(drag: WindowDrag): void;
  /** A press that did not become a drag. */
  onClick(windowId: string): void;
}

export function dragWindow(
  event: ReactPointerEvent<HTMLElement>,
  window: ShownWindow,
  grip: Grip,
  how: DragSetting,
): void {
  const { scale } = how.stage;
  if (event.button !== 0 || scale === null) return;
  const fromX = event.clientX;
  let begun = false;
  followPointer(event.currentTarget, event.nativeEvent, {
    move: (moved) => {
      const byPx = moved.clientX - fromX;
      if (!begun && Math.abs(byPx) < TREMBLE_PX) return;
      if (!begun) how.onWindowDrag({ phase: 'start', windowId: window.id });
      begun = true;
      const stretch = gripped(window, grip, byPx * scale.secondsPerPixel, how.limits);
      how.onWindowDrag({ phase: 'move', windowId: window.id, stretch });
    },
    up: () => {
      if (begun) how.onWindowDrag({ phase: 'end', windowId: window.id });
      else how.onClick(window.id);
    },
    abandon: () => {
      if (begun) how.onWindowDrag({ phase: 'abandon', windowId: window.id });
    },
  });
}

/** A key on an edge or on the whole: true where it meant something. Holding it down is one step until it comes up. */
export function keyWindow(
  event: { readonly key: string; readonly shiftKey: boolean; readonly repeat: boolean },
  window: ShownWindow,
  grip: Grip,
  how: DragSetting,
): boolean {
  const { scale } = how.stage;
  if (scale === null) return false;
  const range = rangeOf(window, grip, how.limits);
  const fromS = grip === 'end' ? window.endS : window.startS;
  const toS = edgeKeyTime(event, fromS, scale.secondsPerPixel, range);
  if (toS === null) return false;
  if (!event.repeat) how.onWindowDrag({ phase: 'start', windowId: window.id });
  const stretch = gripped(window, grip, toS - fromS, how.limits);
  how.onWindowDrag({ phase: 'move', windowId: window.id, stretch });
  return true;
}

/** How far an edge may go: the edges limit each other. */
export function rangeOf(window: ShownWindow, grip: Grip, limits: ZoomLimits): { startS: number; endS: number } {
  if (grip === 'start') return { startS: limits.startS, endS: window.endS - limits.leastSpanS };
  if (grip === 'end') return { startS: window.startS + limits.leastSpanS, endS: limits.endS };
  return { startS: limits.startS, endS: limits.endS - (window.endS - window.startS) };
}

function gripped(window: ShownWindow, grip: Grip, byS: number, limits: ZoomLimits) {
  if (grip === 'body') return withStart(window, window.startS + byS, limits);
  const fromS = grip === 'start' ? window.startS : window.endS;
  return withEdge(window, grip, fromS + byS, limits, limits.leastSpanS);
}
