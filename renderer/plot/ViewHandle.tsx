import { type KeyboardEvent, type PointerEvent, useCallback, useRef } from 'react';
import type { Stretch } from '../../core/windows/window.ts';
import { followPointer } from './followPointer.ts';
import type { Stage } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import { usePlacer } from './useStage.ts';
import { viewByGrip, viewByKey } from './viewGrip.ts';
import { type Edge, edgeZones } from './windowEdges.ts';
import type { ZoomLimits } from './zoom.ts';

interface ViewHandleProps {
  readonly stage: Stage;
  readonly visible: Stretch;
  readonly limits: ZoomLimits;
  onVisible(stretch: Stretch, step: boolean): void;
}

/** Least width of the handle as a thing to grab, px; what is drawn may be narrower. */
const LEAST_HANDLE_PX = 24;

/** The visible stretch: a body that is moved and two edges that are stretched, each by pointer or by key. */
export function ViewHandle({ stage, visible, limits, onVisible }: ViewHandleProps) {
  const layer = useRef<HTMLDivElement>(null);
  const place = useCallback(
    (scale: TimeScale): void => {
      const box = layer.current;
      if (box === null) return;
      const startX = scale.clampX(scale.xOf(visible.startS));
      const endX = scale.clampX(scale.xOf(visible.endS));
      const spare = Math.max(0, LEAST_HANDLE_PX - (endX - startX)) / 2;
      const zones = edgeZones(startX - spare, endX + spare, LEAST_HANDLE_PX);
      const set = (name: string, px: number): void => box.style.setProperty(name, `${px}px`);
      set('--start', startX);
      set('--end', endX);
      set('--body-start', startX - spare);
      set('--body-end', endX + spare);
      set('--start-zone', zones.start);
      set('--end-zone', zones.end);
    },
    [visible],
  );
  usePlacer(stage, place);

  const drag = (grip: Edge | 'body') => (event: PointerEvent<HTMLElement>) => {
    const { scale } = stage;
    if (event.button !== 0 || scale === null) return;
    event.stopPropagation();
    const fromX = event.clientX;
    const moved = (clientX: number): Stretch =>
      viewByGrip(visible, grip, (clientX - fromX) * scale.secondsPerPixel, limits);
    followPointer(event.currentTarget, event.nativeEvent, {
      move: (at) => onVisible(moved(at.clientX), false),
      up: (at) => onVisible(moved(at.clientX), true),
      abandon: () => onVisible(visible, true),
    });
  };
  const key = (grip: Edge | 'body') => (event: KeyboardEvent<HTMLElement>) => {
    const next = viewByKey(event.key, grip, visible, limits, stage.scale?.secondsPerPixel ?? 0);
    if (next === null || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    onVisible(next, true);
  };
  const edge = (which: Edge) => (
    <div
      className={`viewEdge ${which}`}
      role="slider"
      tabIndex={0}
      aria-label={which === 'start' ? 'Start of what is visible' : 'End of what is visible'}
      aria-orientation="horizontal"
      aria-valuemin={limits.startS}
      aria-valuemax={limits.endS}
      aria-valuenow={which === 'start' ? visible.startS : visible.endS}
      aria-valuetext={stage.moment(which === 'start' ? visible.startS : visible.endS)}
      onPointerDown={drag(which)}
      onKeyDown={key(which)}
    />
  );

  return (
    <div className="viewHandle" ref={layer}>
      <span className="viewVeil before" />
      <span className="viewVeil after" />
      {edge('start')}
      <div
        className="viewBody"
        role="slider"
        tabIndex={0}
        aria-label="Visible stretch"
        aria-orientation="horizontal"
        aria-valuemin={limits.startS}
        aria-valuemax={limits.endS}
        aria-valuenow={visible.startS}
        aria-valuetext={`${stage.moment(visible.startS)} to ${stage.moment(visible.endS)}`}
        onPointerDown={drag('body')}
        onKeyDown={key('body')}
      />
      {edge('end')}
    </div>
  );
}
