import { type KeyboardEvent, memo, type PointerEvent, useMemo } from 'react';
import { CursorSlider } from './CursorSlider.tsx';
import { type CompareSetting, compareModel } from './compareModel.ts';
import type { ComparedPane } from './compareStackProps.ts';
import { PaneCanvas } from './PaneCanvas.tsx';
import { PaneHead } from './PaneHead.tsx';
import type { Readings } from './readings.ts';
import { LEFT_GUTTER, type Stage } from './stage.ts';
import { growOf } from './TracePane.tsx';

interface ComparePaneProps {
  readonly stage: Stage;
  readonly pane: ComparedPane;
  readonly setting: CompareSetting;
  readonly firstShiftS: number;
  readonly secondShiftS: number;
  readonly readings: Readings;
  readonly endS: number;
  readonly describedBy: string;
  onKeyDown(event: KeyboardEvent<HTMLElement>, pane: ComparedPane): void;
  onPointerDown(event: PointerEvent<HTMLElement>): void;
}

const CANVAS_STYLE = { leftGutter: LEFT_GUTTER, margin: 7, timeGrid: true, valueLabels: true } as const;

/** One quantity of both sides over each other. */
export const ComparePane = memo(function ComparePane(props: ComparePaneProps) {
  const { stage, pane, setting, firstShiftS, secondShiftS, readings } = props;
  const model = useMemo(() => compareModel(pane, setting), [pane, setting]);
  const wish = useMemo(
    () => ({ ...model.wish, shifts: [firstShiftS, secondShiftS] }),
    [model, firstShiftS, secondShiftS],
  );
  return (
    <figure
      className="tracePane"
      style={{ flexGrow: growOf(pane.share) }}
      data-pane={pane.id}
      aria-label={`${model.title}${model.unit === '1' ? '' : `, ${model.unit}`}`}
    >
      <PaneHead stage={stage} readings={readings} model={model} />
      <div className="panePaper">
        <PaneCanvas stage={stage} wish={wish} style={CANVAS_STYLE} />
        <CursorSlider
          stage={stage}
          readings={readings}
          model={model}
          endS={props.endS}
          describedBy={props.describedBy}
          onKeyDown={(event) => props.onKeyDown(event, pane)}
          onPointerDown={props.onPointerDown}
        />
      </div>
    </figure>
  );
});
