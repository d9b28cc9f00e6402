import { type RefObject, useEffect } from 'react';
import type { Stretch } from '../../core/windows/window.ts';
import type { Stage } from './stage.ts';
import { wheelDeed } from './wheel.ts';
import { panBy, sameStretch, type ZoomLimits, zoomAt } from './zoom.ts';

export interface WheelSetting {
  readonly wheel: 'zoom' | 'pan';
  readonly limits: ZoomLimits;
  onVisible(stretch: Stretch, step: boolean): void;
  /** The value scale of the pane under the pointer, times `factor` around the pointer. */
  onValueZoom(target: Element, clientY: number, factor: number): void;
}

/** So long after the last turn of the wheel the view counts as chosen and joins the way back, ms. */
const REST_MS = 350;

/** The wheel over the whole stack; the page beneath never scrolls by it. */
export function useWheel(stage: Stage, root: RefObject<HTMLElement | null>, latest: RefObject<WheelSetting>): void {
  useEffect(() => {
    const box = root.current;
    if (box === null) return undefined;
    let timer = 0;
    const look = (stretch: Stretch): void => {
      if (sameStretch(stretch, stage.visible)) return;
      stage.look(stretch, false);
      latest.current.onVisible(stretch, false);
      window.clearTimeout(timer);
      timer = window.setTimeout(() => latest.current.onVisible(stage.visible, true), REST_MS);
    };
    const onWheel = (event: WheelEvent): void => {
      const { scale } = stage;
      if (scale === null || !(event.target instanceof Element) || event.target.closest('.paneMenuCard') !== null)
        return;
      event.preventDefault();
      const { wheel, limits, onValueZoom } = latest.current;
      const deed = wheelDeed(event, wheel);
      if (deed === null) return;
      if (deed.kind === 'value') onValueZoom(event.target, event.clientY, deed.factor);
      else if (deed.kind === 'pan') look(panBy(stage.visible, deed.pixels * secondsPerPixel(stage), limits));
      else look(zoomAt(stage.visible, timeUnder(event.clientX, box, stage), deed.factor, limits));
    };
    box.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      box.removeEventListener('wheel', onWheel);
      window.clearTimeout(timer);
    };
  }, [stage, root, latest]);
}

/** Several turns can come before the next frame, so the view that is wanted counts and not the one that is drawn. */
function secondsPerPixel(stage: Stage): number {
  return (stage.visible.endS - stage.visible.startS) / (stage.scale?.width ?? 1);
}

function timeUnder(clientX: number, box: HTMLElement, stage: Stage): number {
  const { scale, visible } = stage;
  if (scale === null) return visible.startS;
  const x = scale.clampX(clientX - box.getBoundingClientRect().left);
  return visible.startS + (x - scale.left) * secondsPerPixel(stage);
}
