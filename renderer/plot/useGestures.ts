import { type PointerEvent, type RefObject, useCallback, useEffect, useRef, useState } from 'react';
import type { Stretch } from '../../core/windows/window.ts';
import { followPointer } from './followPointer.ts';
import {
  abandonGesture,
  beginGesture,
  endGesture,
  type GestureDeed,
  type GestureState,
  moveGesture,
} from './gesture.ts';
import { Signal } from './signal.ts';
import type { Stage } from './stage.ts';
import type { PointerTool } from './traceStackProps.ts';
import type { ZoomLimits } from './zoom.ts';

export interface GestureSetting {
  readonly tool: PointerTool;
  readonly limits: ZoomLimits;
  onVisible(stretch: Stretch, step: boolean): void;
  onMark(stretch: Stretch): void;
  onNoteAt(startS: number, endS: number | null): void;
  onSecondCursor(timeS: number): void;
  /** A press and release in one place, outside any handle. */
  onClick(timeS: number): void;
}

/** Pointers on the paper: the tool's gesture, with the stretch under way as a signal for its preview. */
export function useGestures(stage: Stage, root: RefObject<HTMLElement | null>, latest: RefObject<GestureSetting>) {
  const [preview] = useState(() => new Signal<Stretch | null>(null));
  const space = useSpaceKey(root);

  const onPointerDown = useCallback(
    (event: PointerEvent<HTMLElement>) => {
      const { scale } = stage;
      if (scale === null || root.current === null) return;
      const left = root.current.getBoundingClientRect().left;
      const press = { x: event.clientX - left, button: event.button, shift: event.shiftKey, space: space.current };
      let state: GestureState | null = beginGesture(press, latest.current.tool, scale);
      if (state === null) return;
      if (event.button === 1) event.preventDefault();
      const done = (deeds: readonly GestureDeed[]): void => {
        for (const deed of deeds) doDeed(deed, stage, preview, latest.current);
      };
      const paper = event.currentTarget;
      paper.classList.add('held');
      followPointer(paper, event.nativeEvent, {
        move: (moved) => {
          if (state === null) return;
          const step = moveGesture(state, moved.clientX - left, latest.current.limits);
          state = step.state;
          done(step.deeds);
        },
        up: (released) => {
          paper.classList.remove('held');
          if (state !== null) done(endGesture(state, released.clientX - left, latest.current.limits));
        },
        abandon: () => {
          paper.classList.remove('held');
          if (state !== null) done(abandonGesture(state));
        },
      });
    },
    [stage, root, latest, preview, space],
  );
  return { preview, onPointerDown };
}

function doDeed(deed: GestureDeed, stage: Stage, preview: Signal<Stretch | null>, how: GestureSetting): void {
  switch (deed.kind) {
    case 'preview':
      preview.set(deed.stretch);
      return;
    case 'look':
      stage.look(deed.stretch, false);
      how.onVisible(deed.stretch, deed.step);
      return;
    case 'mark':
      how.onMark(deed.stretch);
      return;
    case 'note':
      how.onNoteAt(deed.startS, deed.endS);
      return;
    case 'secondCursor':
      stage.setSecondCursor(deed.timeS);
      how.onSecondCursor(deed.timeS);
      return;
    case 'click':
      how.onClick(deed.timeS);
  }
}

/** Whether the Space key is held while the stack has the focus or the pointer; its scrolling is held back. */
function useSpaceKey(root: RefObject<HTMLElement | null>): RefObject<boolean> {
  const held = useRef(false);
  useEffect(() => {
    const set = (down: boolean): void => {
      held.current = down;
      root.current?.classList.toggle('spaceHeld', down);
    };
    const onKey = (event: KeyboardEvent): void => {
      if (event.code !== 'Space') return;
      if (event.type === 'keyup') set(false);
      const onPaper = event.target instanceof Element && event.target.closest('.cursorSlider') !== null;
      const onPage = event.target === document.body && root.current?.matches(':hover') === true;
      if (event.type !== 'keydown' || !(onPaper || onPage)) return;
      set(true);
      event.preventDefault();
    };
    const drop = (): void => set(false);
    window.addEventListener('keydown', onKey);
    window.addEventListener('keyup', onKey);
    window.addEventListener('blur', drop);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('keyup', onKey);
      window.removeEventListener('blur', drop);
    };
  }, [root]);
  return held;
}
