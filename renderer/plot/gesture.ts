// A pointer that goes down on the paper, moves and comes up again, as a machine without side effects: what is shown
// meanwhile, and what is done at the end. Nothing is done before the release; Escape leaves everything as it was.

import type { Stretch } from '../../core/windows/window.ts';
import type { TimeScale } from './timeScale.ts';
import type { PointerTool } from './traceStackProps.ts';
import { panBy, sameStretch, type ZoomLimits } from './zoom.ts';

/** Pixels a pointer may tremble before a press becomes a drag. */
const TREMBLE_PX = 4;

export interface GestureState {
  readonly tool: PointerTool;
  readonly fromX: number;
  readonly dragging: boolean;
  /** The scale when the pointer went down; a pan is counted from it. */
  readonly scale: TimeScale;
  readonly visible: Stretch;
  readonly shift: boolean;
}

export interface Press {
  readonly x: number;
  /** As in the DOM: 0 main, 1 middle. */
  readonly button: number;
  readonly shift: boolean;
  readonly space: boolean;
}

/** What the stack does about it, in order. */
export type GestureDeed =
  | { readonly kind: 'preview'; readonly stretch: Stretch | null }
  | { readonly kind: 'look'; readonly stretch: Stretch; readonly step: boolean }
  | { readonly kind: 'mark'; readonly stretch: Stretch }
  | { readonly kind: 'note'; readonly startS: number; readonly endS: number | null }
  | { readonly kind: 'secondCursor'; readonly timeS: number }
  | { readonly kind: 'click'; readonly timeS: number };

/** The gesture that a press begins, or null for a button that means nothing here. */
export function beginGesture(press: Press, tool: PointerTool, scale: TimeScale): GestureState | null {
  const pans = press.button === 1 || (press.button === 0 && press.space);
  if (!pans && press.button !== 0) return null;
  return {
    tool: pans ? 'pan' : tool,
    fromX: press.x,
    dragging: false,
    scale,
    visible: { startS: scale.startS, endS: scale.endS },
    shift: press.shift,
  };
}

export function moveGesture(
  state: GestureState,
  x: number,
  limits: ZoomLimits,
): { readonly state: GestureState; readonly deeds: readonly GestureDeed[] } {
  if (!state.dragging && Math.abs(x - state.fromX) < TREMBLE_PX) return { state, deeds: [] };
  const moving = { ...state, dragging: true };
  if (state.tool === 'pan')
    return { state: moving, deeds: [{ kind: 'look', stretch: panned(state, x, limits), step: false }] };
  return { state: moving, deeds: [{ kind: 'preview', stretch: dragged(state, x, limits) }] };
}

export function endGesture(state: GestureState, x: number, limits: ZoomLimits): readonly GestureDeed[] {
  if (!state.dragging) return clicked(state);
  const stretch = dragged(state, x, limits);
  switch (state.tool) {
    case 'pan':
      return [{ kind: 'look', stretch: panned(state, x, limits), step: true }];
    case 'zoom':
      return [
        { kind: 'preview', stretch: null },
        { kind: 'look', stretch, step: true },
      ];
    case 'mark':
      return [
        { kind: 'preview', stretch: null },
        { kind: 'mark', stretch },
      ];
    case 'note':
      return [
        { kind: 'preview', stretch: null },
        { kind: 'note', startS: stretch.startS, endS: stretch.endS },
      ];
  }
}

/** Escape, or a pointer that was taken away: the view goes back to where it was, a preview is dropped. */
export function abandonGesture(state: GestureState): readonly GestureDeed[] {
  if (!state.dragging) return [];
  if (state.tool !== 'pan') return [{ kind: 'preview', stretch: null }];
  return [{ kind: 'look', stretch: state.visible, step: true }];
}

function clicked(state: GestureState): readonly GestureDeed[] {
  const timeS = state.scale.timeOf(state.scale.clampX(state.fromX));
  if (state.shift) return [{ kind: 'secondCursor', timeS }];
  if (state.tool === 'note') return [{ kind: 'note', startS: timeS, endS: null }];
  return [{ kind: 'click', timeS }];
}

function panned(state: GestureState, x: number, limits: ZoomLimits): Stretch {
  const stretch = panBy(state.visible, (state.fromX - x) * state.scale.secondsPerPixel, limits);
  return sameStretch(stretch, state.visible) ? state.visible : stretch;
}

function dragged(state: GestureState, x: number, limits: ZoomLimits): Stretch {
  const timeAt = (pixel: number): number =>
    Math.min(limits.endS, Math.max(limits.startS, state.scale.timeOf(state.scale.clampX(pixel))));
  const [startS, endS] = [timeAt(state.fromX), timeAt(x)].sort((one, other) => one - other);
  return { startS: startS ?? 0, endS: endS ?? 0 };
}
