import { type RefObject, useLayoutEffect, useRef } from 'react';
import type { SurfaceStyle } from './paneAxes.ts';
import { PaneDrawing, type PaneSight, type PaneWish } from './paneDrawing.ts';
import type { Stage } from './stage.ts';
import { useLatest } from './useStage.ts';

interface PaneCanvasProps {
  readonly stage: Stage;
  readonly wish: PaneWish;
  readonly style: Omit<SurfaceStyle, 'family'>;
  /** Where the drawing is put, for those who ask it for its scale. */
  readonly drawing?: RefObject<PaneDrawing | null>;
  onSight?(sight: PaneSight): void;
}

/** The canvas of one pane. React makes its place and hands it its wish; it draws when the stage says so. */
export function PaneCanvas({ stage, wish, style, drawing, onSight }: PaneCanvasProps) {
  const host = useRef<HTMLDivElement>(null);
  const own = useRef<PaneDrawing | null>(null);
  const first = useLatest({ wish, style, onSight, drawing });

  useLayoutEffect(() => {
    const box = host.current;
    if (box === null) return undefined;
    const { wish: begin, style: how, drawing: handed } = first.current;
    const family = getComputedStyle(box).fontFamily;
    const made = new PaneDrawing(stage, box, { ...how, family }, begin, (sight) => first.current.onSight?.(sight));
    own.current = made;
    if (handed !== undefined) handed.current = made;
    made.setSize(box.clientWidth, box.clientHeight);
    const watch = new ResizeObserver(() => made.setSize(box.clientWidth, box.clientHeight));
    watch.observe(box);
    return () => {
      watch.disconnect();
      made.close();
      own.current = null;
      if (handed !== undefined) handed.current = null;
    };
  }, [stage, first]);

  useLayoutEffect(() => own.current?.update(wish), [wish]);

  return <div ref={host} className="paneCanvas" aria-hidden="true" />;
}
