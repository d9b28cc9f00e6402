import { type KeyboardEvent, type PointerEvent, useLayoutEffect, useRef } from 'react';
import { withUnit } from '../words/numbers.ts';
import type { PaneModel } from './paneModel.ts';
import { valueDigits } from './paneWords.ts';
import type { Readings } from './readings.ts';
import type { Stage } from './stage.ts';

interface CursorSliderProps {
  readonly stage: Stage;
  readonly readings: Readings;
  readonly model: PaneModel;
  readonly endS: number;
  readonly describedBy: string;
  onKeyDown(event: KeyboardEvent<HTMLElement>): void;
  onPointerDown(event: PointerEvent<HTMLElement>): void;
}

/**
 * The paper of a pane as something that can have the focus: a slider whose value is the time of the cursor. Its words are
 * written past React, for they change with every move of the hand.
 */
export function CursorSlider(props: CursorSliderProps) {
  const { stage, readings, model, endS, describedBy, onKeyDown, onPointerDown } = props;
  const slider = useRef<HTMLDivElement>(null);

  useLayoutEffect(() => {
    const write = (): void => {
      const box = slider.current;
      if (box === null) return;
      const { cursorS } = stage;
      box.setAttribute('aria-valuenow', (cursorS ?? stage.visible.startS).toFixed(3));
      box.setAttribute('aria-valuetext', cursorWords(stage, readings, model));
    };
    write();
    return readings.onChange(write);
  }, [stage, readings, model]);

  return (
    <div
      ref={slider}
      className="cursorSlider"
      role="slider"
      tabIndex={0}
      aria-label={`Cursor in ${model.title}`}
      aria-describedby={describedBy}
      aria-orientation="horizontal"
      aria-valuemin={0}
      aria-valuemax={endS}
      aria-valuenow={0}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
    />
  );
}

/** "61.2 s. Upstream 0.45 V, Downstream 0.62 V." */
function cursorWords(stage: Stage, readings: Readings, { legend, shown }: PaneModel): string {
  if (stage.cursorS === null) return 'No cursor yet.';
  const values = legend.flatMap(({ readingKey, channel, words, fullWords }) => {
    if (channel === null) return [];
    const value = readings.at(readingKey)?.value ?? null;
    const name = words === '' ? fullWords : words;
    return value === null
      ? [`${name} no sample`]
      : [`${name} ${withUnit(shown.toShown(value), shown.unit, valueDigits(channel))}`];
  });
  return `${stage.moment(stage.cursorS)}. ${values.join(', ')}.`;
}
