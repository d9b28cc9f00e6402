import { type KeyboardEvent, type RefObject, useCallback, useMemo } from 'react';
import type { CaptureOutline } from '../../core/bridge/coreMessages.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { CursorWalk, nextStopTime } from './cursorWalk.ts';
import { type PaneKeyDeed, paneKeyDeed } from './paneKeys.ts';
import type { Stage } from './stage.ts';
import type { PaneLayout, ShownNote, ShownWindow, TraceSource } from './traceStackProps.ts';
import { panBy, showTime, type ZoomLimits, zoomAt } from './zoom.ts';

export interface KeySetting {
  readonly capture: CaptureOutline;
  readonly source: TraceSource;
  readonly windows: readonly ShownWindow[];
  readonly notes: readonly ShownNote[];
  readonly limits: ZoomLimits;
  onVisible(stretch: Stretch, step: boolean): void;
  onCursor(timeS: number | null): void;
  onSecondCursor(timeS: number | null): void;
}

/** Keys in a focused pane. */
export function usePaneKeys(stage: Stage, source: TraceSource, latest: RefObject<KeySetting>) {
  const walk = useMemo(() => new CursorWalk(source), [source]);
  return useCallback(
    (event: KeyboardEvent<HTMLElement>, pane: PaneLayout): void => {
      if (event.defaultPrevented) return;
      const deed = paneKeyDeed(event);
      if (deed === null || !doKey(deed, { stage, walk, pane, how: latest.current })) return;
      event.preventDefault();
      event.stopPropagation();
    },
    [stage, walk, latest],
  );
}

interface KeyPlace {
  readonly stage: Stage;
  readonly walk: CursorWalk;
  readonly pane: PaneLayout;
  readonly how: KeySetting;
}

/** True where the key meant something here. */
function doKey(deed: PaneKeyDeed, place: KeyPlace): boolean {
  const { stage, how } = place;
  const { visible } = stage;
  switch (deed.kind) {
    case 'step':
      step(deed.direction * deed.count, place);
      return true;
    case 'stop':
      void stop(deed.direction, place);
      return true;
    case 'zoom':
      look(place, zoomAt(visible, anchor(stage), deed.factor, how.limits));
      return true;
    case 'pan':
      look(place, panBy(visible, deed.screens * (visible.endS - visible.startS), how.limits));
      return true;
    case 'end':
      look(place, panBy(visible, deed.direction * (how.limits.endS - how.limits.startS), how.limits));
      return true;
    case 'drop':
      if (stage.secondCursorS === null) return false;
      stage.setSecondCursor(null);
      how.onSecondCursor(null);
      return true;
  }
}

/** By samples of the pane's first channel where they are wider than a pixel, else by pixels. */
function step(count: number, place: KeyPlace): void {
  const { stage, walk, pane, how } = place;
  const { scale } = stage;
  if (scale === null) return;
  const channel = how.capture.channels.find(({ id }) => id === pane.channelIds[0]);
  const intervalS = channel !== undefined && channel.facts.medianRateHz > 0 ? 1 / channel.facts.medianRateHz : 0;
  const fromS = stage.cursorS ?? anchor(stage);
  if (channel !== undefined && intervalS > scale.secondsPerPixel) {
    void walk.walk(channel.id, fromS, count, (timeS) => arrive(timeS, place));
  } else {
    const timeS = fromS + count * scale.secondsPerPixel;
    arrive(Math.min(how.limits.endS, Math.max(how.limits.startS, timeS)), place);
  }
}

async function stop(direction: 1 | -1, place: KeyPlace): Promise<void> {
  const { stage, pane, how } = place;
  const switching = pane.channelIds.filter((id) => {
    const role = how.capture.channels.find((channel) => channel.id === id)?.role;
    return role === 'upstreamO2' || role === 'downstreamO2';
  });
  const fromS = stage.cursorS ?? anchor(stage);
  const timeS = await nextStopTime(how.source, switching, how.windows, how.notes, fromS, direction);
  if (timeS !== null) arrive(timeS, place);
}

function arrive(timeS: number, place: KeyPlace): void {
  const { stage, how } = place;
  stage.setCursor(timeS);
  how.onCursor(timeS);
  const next = showTime(stage.visible, timeS, how.limits);
  if (next !== stage.visible) look(place, next);
}

function look({ stage, how }: KeyPlace, stretch: Stretch): void {
  stage.look(stretch, false);
  how.onVisible(stretch, true);
}

/** Where a key zooms: at the cursor while it is in sight, else in the middle. */
function anchor(stage: Stage): number {
  const { cursorS, visible } = stage;
  if (cursorS !== null && cursorS >= visible.startS && cursorS <= visible.endS) return cursorS;
  return (visible.startS + visible.endS) / 2;
}
