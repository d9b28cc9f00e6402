import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { Stretch } from '../../core/windows/window.ts';
import type { TimeForm } from '../words/captureTimes.ts';
import { type Placer, Stage } from './stage.ts';

/** The newest value for handlers that are made once. */
export function useLatest<T>(value: T): RefObject<T> {
  const latest = useRef(value);
  useLayoutEffect(() => {
    latest.current = value;
  });
  return latest;
}

/** A stage for the life of the component, as wide as `element`. */
export function useStage(visible: Stretch, form: TimeForm, element: RefObject<HTMLElement | null>): Stage {
  const [stage] = useState(() => new Stage(visible, form));
  useLayoutEffect(() => {
    const box = element.current;
    if (box === null) return undefined;
    stage.resize(box.clientWidth);
    const watch = new ResizeObserver(() => stage.resize(box.clientWidth));
    watch.observe(box);
    return () => watch.disconnect();
  }, [stage, element]);
  useEffect(() => {
    const redraw = (): void => stage.redraw();
    // A canvas does not notice a typeface that arrives late, nor a window that moves to a finer screen.
    document.fonts.addEventListener('loadingdone', redraw);
    window.addEventListener('resize', redraw);
    return () => {
      document.fonts.removeEventListener('loadingdone', redraw);
      window.removeEventListener('resize', redraw);
      stage.close();
    };
  }, [stage]);
  return stage;
}

/** Calls `place` inside the frame after every change of the scale, and whenever `place` itself changes. */
export function usePlacer(stage: Stage, place: Placer): void {
  useLayoutEffect(() => stage.addPlacer(place), [stage, place]);
}

export function prefersStillness(): boolean {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}
