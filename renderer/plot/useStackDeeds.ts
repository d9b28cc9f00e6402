// What the parts of the stack do when they are used, each with the newest props at hand.

import { type RefObject, useMemo } from 'react';
import type { PaneDrawing } from './paneDrawing.ts';
import type { Stage } from './stage.ts';
import type { PaneDeeds } from './TracePane.tsx';
import type { PaneLayout, TraceStackProps } from './traceStackProps.ts';
import { useLatest } from './useStage.ts';
import { zoomValues } from './valueZoom.ts';
import type { DragSetting } from './windowDrag.ts';
import { windowAt } from './windowEdges.ts';
import { showTime, type ZoomLimits } from './zoom.ts';

export type Latest = RefObject<TraceStackProps & { readonly limits: ZoomLimits }>;
export type Drawings = RefObject<Map<string, PaneDrawing>>;

export function useWheelSetting(latest: Latest, drawings: Drawings) {
  return useLatest({
    get wheel() {
      return latest.current.wheel;
    },
    get limits() {
      return latest.current.limits;
    },
    onVisible: (...look: Parameters<TraceStackProps['onVisible']>) => latest.current.onVisible(...look),
    onValueZoom: (target: Element, clientY: number, factor: number) => {
      const paper = target.closest('[data-pane]')?.querySelector('.panePaper');
      const pane = latest.current.panes.find(
        ({ id }) => id === target.closest('[data-pane]')?.getAttribute('data-pane'),
      );
      const range = pane === undefined ? undefined : drawings.current.get(pane.id)?.range;
      if (pane === undefined || range === undefined || !(paper instanceof Element)) return;
      const box = paper.getBoundingClientRect();
      const scale = zoomValues(range, (box.bottom - clientY) / box.height, factor);
      latest.current.onPaneChange({ ...pane, scale });
    },
  });
}

export function useGestureSetting(latest: Latest) {
  return useLatest({
    get tool() {
      return latest.current.tool;
    },
    get limits() {
      return latest.current.limits;
    },
    onVisible: (...look: Parameters<TraceStackProps['onVisible']>) => latest.current.onVisible(...look),
    onMark: (...mark: Parameters<TraceStackProps['onMark']>) => latest.current.onMark(...mark),
    onNoteAt: (...note: Parameters<TraceStackProps['onNoteAt']>) => latest.current.onNoteAt(...note),
    onSecondCursor: (timeS: number) => latest.current.onSecondCursor(timeS),
    onClick: (timeS: number) => {
      const { windows, selectedWindowId, onSelectWindow } = latest.current;
      const there = windowAt(windows, timeS, selectedWindowId);
      if (there !== null && there.id !== selectedWindowId) onSelectWindow(there.id);
    },
  });
}

export function useDeeds(
  stage: Stage,
  latest: Latest,
  drawings: Drawings,
  onKeyDown: PaneDeeds['onKeyDown'],
  onPointerDown: PaneDeeds['onPointerDown'],
): PaneDeeds {
  const canOrder = latest.current.onPaneOrder !== undefined;
  return useMemo<PaneDeeds>(
    () => ({
      onPaneChange: (pane) => latest.current.onPaneChange(pane),
      onMove: canOrder ? (paneId, by) => moved(latest.current, paneId, by) : null,
      onKeyDown,
      onPointerDown,
      onCommand: (id) => latest.current.onCommand(id),
      onToSamples: (pane) => void toSamples(stage, latest.current, pane),
      lendDrawing: (paneId, drawing) => {
        if (drawing === null) drawings.current.delete(paneId);
        else drawings.current.set(paneId, drawing);
      },
    }),
    [stage, latest, drawings, canOrder, onKeyDown, onPointerDown],
  );
}

function moved({ panes, onPaneOrder }: TraceStackProps, paneId: string, by: 1 | -1): void {
  const ids = panes.map(({ id }) => id);
  const at = ids.indexOf(paneId);
  const other = ids[at + by];
  if (other === undefined) return;
  onPaneOrder?.(ids.map((id) => (id === paneId ? other : id === other ? paneId : id)));
}

async function toSamples(stage: Stage, props: Latest['current'], pane: PaneLayout): Promise<void> {
  const middleS = (stage.visible.startS + stage.visible.endS) / 2;
  const channelId = pane.channelIds[0];
  if (channelId === undefined) return;
  const [after, before] = await Promise.all(
    ([1, -1] as const).map((direction) =>
      props.source.nextStop(channelId, middleS, direction, 'sample').catch(() => null),
    ),
  );
  const found = [after, before].filter((timeS): timeS is number => typeof timeS === 'number');
  const nearest = found.sort((a, b) => Math.abs(a - middleS) - Math.abs(b - middleS))[0];
  if (nearest !== undefined) props.onVisible(showTime(stage.visible, nearest, props.limits), true);
}

/** Edges and tabs of windows. */
export function useDragSetting(stage: Stage, limits: ZoomLimits, latest: Latest): DragSetting {
  return useMemo(
    () => ({
      stage,
      limits,
      onWindowDrag: (drag) => latest.current.onWindowDrag(drag),
      onClick: (id) => latest.current.onSelectWindow(id),
    }),
    [stage, limits, latest],
  );
}
