import { memo, useCallback, useRef } from 'react';
import type { Stage } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import type { ShownWindow } from './traceStackProps.ts';
import { usePlacer } from './useStage.ts';
import { type DragSetting, dragWindow, keyWindow, rangeOf } from './windowDrag.ts';
import { type Edge, edgeZones, GRAB_PX } from './windowEdges.ts';

interface WindowEdgesProps {
  readonly stage: Stage;
  readonly windows: readonly ShownWindow[];
  readonly selectedWindowId: string | null;
  readonly drag: DragSetting;
}

/**
 * The edges of windows over all panes: drawn as a hair, grabbed in a zone of 24 px. The selected window's two edges are a
 * slider with two thumbs; those of the others answer to the pointer alone, so that Tab does not have to pass them all.
 */
export const WindowEdges = memo(function WindowEdges({ stage, windows, selectedWindowId, drag }: WindowEdgesProps) {
  const layer = useRef<HTMLDivElement>(null);
  const owned = windows.filter(({ offer }) => !offer);
  const place = useCallback(
    (scale: TimeScale): void => {
      const handles = layer.current?.children ?? [];
      windows
        .filter(({ offer }) => !offer)
        .forEach(({ startS, endS }, i) => {
          const startX = scale.xOf(startS);
          const endX = scale.xOf(endS);
          const zones = edgeZones(startX, endX);
          placeEdge(handles[2 * i], scale, startX, zones.start);
          placeEdge(handles[2 * i + 1], scale, endX, zones.end);
        });
    },
    [windows],
  );
  usePlacer(stage, place);
  return (
    <div className="windowEdges" ref={layer}>
      {owned.flatMap((window) =>
        (['start', 'end'] as const).map((edge) => (
          <EdgeHandle
            key={`${window.id} ${edge}`}
            stage={stage}
            window={window}
            edge={edge}
            selected={window.id === selectedWindowId}
            drag={drag}
          />
        )),
      )}
    </div>
  );
});

interface EdgeHandleProps {
  readonly stage: Stage;
  readonly window: ShownWindow;
  readonly edge: Edge;
  readonly selected: boolean;
  readonly drag: DragSetting;
}

function EdgeHandle({ stage, window, edge, selected, drag }: EdgeHandleProps) {
  const moving = useRef(false);
  const timeS = edge === 'start' ? window.startS : window.endS;
  const range = rangeOf(window, edge, drag.limits);
  const end = (): void => {
    if (moving.current) drag.onWindowDrag({ phase: 'end', windowId: window.id });
    moving.current = false;
  };
  return (
    <div
      className={selected ? 'windowEdge selected' : 'windowEdge'}
      role="slider"
      tabIndex={selected ? 0 : -1}
      aria-label={`${edge === 'start' ? 'Start' : 'End'} of ${window.name}`}
      aria-orientation="horizontal"
      aria-valuemin={range.startS}
      aria-valuemax={range.endS}
      aria-valuenow={timeS}
      aria-valuetext={stage.moment(timeS)}
      onPointerDown={(event) => {
        event.stopPropagation();
        dragWindow(event, window, edge, drag);
      }}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey || !keyWindow(event, window, edge, drag)) return;
        moving.current = true;
        event.preventDefault();
        event.stopPropagation();
      }}
      onKeyUp={end}
      onBlur={end}
    />
  );
}

/** The zone goes to its place; the hair inside it to the edge itself, on a whole pixel. */
function placeEdge(handle: Element | undefined, scale: TimeScale, x: number, zoneX: number): void {
  if (!(handle instanceof HTMLElement)) return;
  const seen = x >= scale.left - 1 && x <= scale.left + scale.width + 1;
  handle.style.visibility = seen ? '' : 'hidden';
  if (!seen) return;
  handle.style.transform = `translateX(${Math.round(zoneX)}px)`;
  handle.style.setProperty('--hair', `${Math.min(GRAB_PX - 1, Math.max(0, Math.round(x) - Math.round(zoneX)))}px`);
}
