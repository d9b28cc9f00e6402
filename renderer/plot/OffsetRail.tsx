import { type PointerEvent, useCallback, useRef } from 'react';
import { Button } from '../widgets/Button.tsx';
import { KEPT_SPACE, numberWords } from '../words/numbers.ts';
import { comparedStretches } from './compareModel.ts';
import type { CompareStackProps } from './compareStackProps.ts';
import { followPointer } from './followPointer.ts';
import type { Stage } from './stage.ts';
import type { TimeScale } from './timeScale.ts';
import { usePlacer } from './useStage.ts';
import { placeStrip } from './WindowStrips.tsx';

type OffsetRailProps = Pick<CompareStackProps, 'first' | 'second' | 'offsetS' | 'onOffset'> & { readonly stage: Stage };

/**
 * Both windows as bars on the common axis. The second one is moved along the first: by pointer, by arrow keys, and back to
 * equal starts by a button; how far it lies off is always said.
 */
export function OffsetRail({ stage, first, second, offsetS, onOffset }: OffsetRailProps) {
  const rail = useRef<HTMLDivElement>(null);
  const place = useCallback(
    (scale: TimeScale): void => {
      const bars = rail.current?.children ?? [];
      comparedStretches(first, second, offsetS).forEach(({ startS, endS }, i) => {
        const bar = bars[i];
        if (bar instanceof HTMLElement) placeStrip(bar, scale, startS, endS);
      });
    },
    [first, second, offsetS],
  );
  usePlacer(stage, place);
  const reach = Math.max(first.window.endS - first.window.startS, second.window.endS - second.window.startS);
  const held = (seconds: number): number => Math.min(reach, Math.max(-reach, seconds));

  const onPointerDown = (event: PointerEvent<HTMLElement>): void => {
    const { scale } = stage;
    if (event.button !== 0 || scale === null) return;
    const fromX = event.clientX;
    const moved = (clientX: number): number => held(offsetS + (clientX - fromX) * scale.secondsPerPixel);
    followPointer(event.currentTarget, event.nativeEvent, {
      move: (at) => onOffset(moved(at.clientX), false),
      up: (at) => onOffset(moved(at.clientX), true),
      abandon: () => onOffset(offsetS, true),
    });
  };

  return (
    <div className="offsetRail">
      <div className="offsetBars" ref={rail}>
        <div className="offsetBar first">
          <span>{first.label}</span>
        </div>
        <div
          className="offsetBar second"
          role="slider"
          tabIndex={0}
          aria-label={`${second.label}: offset`}
          aria-orientation="horizontal"
          aria-valuemin={-reach}
          aria-valuemax={reach}
          aria-valuenow={offsetS}
          aria-valuetext={offsetWords(second.label, offsetS)}
          onPointerDown={onPointerDown}
          onKeyDown={(event) => {
            const byS = offsetKey(event, stage.scale?.secondsPerPixel ?? 0);
            if (byS === null) return;
            event.preventDefault();
            event.stopPropagation();
            onOffset(held(offsetS + byS), true);
          }}
        >
          <span>{second.label}</span>
        </div>
      </div>
      <p className="offsetWords">
        {offsetWords(second.label, offsetS)}
        {offsetS !== 0 && (
          <Button look="quiet" onPress={() => onOffset(0, true)}>
            Put both starts together
          </Button>
        )}
      </p>
    </div>
  );
}

function offsetWords(label: string, offsetS: number): string {
  if (offsetS === 0) return 'Both begin together.';
  return `${label}: moved ${numberWords(Math.abs(offsetS), 2)}${KEPT_SPACE}s ${offsetS > 0 ? 'later' : 'earlier'}`;
}

function offsetKey(
  event: { readonly key: string; readonly shiftKey: boolean; readonly ctrlKey: boolean; readonly altKey: boolean },
  pixelS: number,
): number | null {
  if (event.ctrlKey || event.altKey) return null;
  const fast = event.shiftKey ? 10 : 1;
  if (event.key === 'ArrowLeft' || event.key === 'ArrowDown') return -pixelS * fast;
  return event.key === 'ArrowRight' || event.key === 'ArrowUp' ? pixelS * fast : null;
}
