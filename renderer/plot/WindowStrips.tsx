import { memo, useCallback, useLayoutEffect, useRef } from 'react';
import type { Stage } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import type { ShownWindow } from './traceStackProps.ts';
import { usePlacer } from './useStage.ts';

interface WindowStripsProps {
  readonly stage: Stage;
  readonly windows: readonly ShownWindow[];
  readonly selectedWindowId: string | null;
}

/** Strips of tinted paper under all panes, and outlines for offers. Placed by the stage, never by React. */
export const WindowStrips = memo(function WindowStrips({ stage, windows, selectedWindowId }: WindowStripsProps) {
  const layer = useRef<HTMLDivElement>(null);
  const place = useCallback(
    (scale: TimeScale): void => {
      const strips = layer.current?.children ?? [];
      windows.forEach((window, i) => {
        const strip = strips[i];
        if (strip instanceof HTMLElement) placeStrip(strip, scale, window.startS, window.endS);
      });
    },
    [windows],
  );
  usePlacer(stage, place);
  return (
    <div className="windowStrips" ref={layer} aria-hidden="true">
      {windows.map(({ id, offer }) => (
        <div key={id} className={stripClass(offer, id === selectedWindowId)} />
      ))}
    </div>
  );
});

/** An offer narrower than this is a bracket at the top: many outlines side by side would be a fence before the traces. */
const NARROW_PX = 48;
/** Narrower than this its two ends would run into one blot: one stroke says where it is. */
const HAIR_PX = 6;

/** Puts a strip where its stretch is, cut off at the edges of the paper. */
export function placeStrip(strip: HTMLElement, scale: TimeScale, startS: number, endS: number): void {
  const left = scale.clampX(scale.xOf(startS));
  const right = scale.clampX(scale.xOf(endS));
  const hidden = endS < scale.startS || startS > scale.endS;
  strip.style.display = hidden ? 'none' : '';
  if (hidden) return;
  // An end beyond the paper is not drawn as if it were one.
  strip.classList.toggle('runsIn', startS < scale.startS);
  strip.classList.toggle('runsOut', endS > scale.endS);
  strip.classList.toggle('narrow', right - left < NARROW_PX);
  strip.classList.toggle('hair', right - left < HAIR_PX);
  strip.style.transform = `translateX(${left}px)`;
  strip.style.width = `${Math.max(1, right - left)}px`;
}

/** A strip that follows one stretch; null hides it. */
export function usePlacedStrip(stage: Stage, stretch: { readonly startS: number; readonly endS: number } | null) {
  const strip = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const box = strip.current;
    if (box === null || stretch === null) return undefined;
    return stage.addPlacer((scale) => placeStrip(box, scale, stretch.startS, stretch.endS));
  }, [stage, stretch]);
  return strip;
}

function stripClass(offer: boolean, selected: boolean): string {
  return `windowStrip${offer ? ' offer' : ''}${selected ? ' selected' : ''}`;
}
