import { type KeyboardEvent, memo, type PointerEvent, useCallback, useId, useMemo, useRef, useState } from 'react';
import { Button } from '../widgets/Button.tsx';
import { CursorSlider } from './CursorSlider.tsx';
import { PaneCanvas } from './PaneCanvas.tsx';
import { PaneHead } from './PaneHead.tsx';
import { PaneMenu } from './PaneMenu.tsx';
import type { PaneDrawing, PaneSight } from './paneDrawing.ts';
import { type PaneSetting, paneModel } from './paneModel.ts';
import type { Readings } from './readings.ts';
import { LEFT_GUTTER, type Stage } from './stage.ts';
import type { PaneLayout, ShownNote, ShownWindow } from './traceStackProps.ts';
import { useDescription } from './useDescription.ts';

export interface PaneDeeds {
  onPaneChange(pane: PaneLayout): void;
  /** Moves the pane by one place; null where that is not offered. */
  readonly onMove: ((paneId: string, by: 1 | -1) => void) | null;
  onKeyDown(event: KeyboardEvent<HTMLElement>, pane: PaneLayout): void;
  onPointerDown(event: PointerEvent<HTMLElement>): void;
  /** Looks for the nearest sample of the pane and shows it. */
  onToSamples(pane: PaneLayout): void;
  onCommand(id: string): void;
  /** Lends a pane's drawing to those who ask for its scale. */
  lendDrawing(paneId: string, drawing: PaneDrawing | null): void;
}

interface TracePaneProps {
  readonly stage: Stage;
  readonly readings: Readings;
  readonly pane: PaneLayout;
  readonly setting: PaneSetting;
  readonly windows: readonly ShownWindow[];
  readonly notes: readonly ShownNote[];
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly deeds: PaneDeeds;
}

const CANVAS_STYLE = { leftGutter: LEFT_GUTTER, margin: 7, timeGrid: true, valueLabels: true } as const;

/** One pane: head, canvas, and the cursor that can have the focus. Renders when its layout changes, never to draw. */
export const TracePane = memo(function TracePane(props: TracePaneProps) {
  const { stage, readings, pane, setting, deeds } = props;
  const model = useMemo(() => paneModel(pane, setting), [pane, setting]);
  const drawing = useRef<PaneDrawing | null>(null);
  const [sight, setSight] = useState<PaneSight>('drawn');
  const description = useId();
  const words = useDescription(stage, setting.source, pane.channelIds, props.windows, props.notes);
  const folded = pane.folded === true;
  const lend = useCallback(
    (box: HTMLElement | null) => deeds.lendDrawing(pane.id, box === null ? null : drawing.current),
    [deeds, pane.id],
  );
  const { onMove } = deeds;

  return (
    <figure
      className={folded ? 'tracePane folded' : 'tracePane'}
      style={{ flexGrow: folded ? 0 : growOf(pane.share) }}
      data-pane={pane.id}
      aria-label={`${model.title}${model.unit === '1' ? '' : `, ${model.unit}`}`}
      id={`pane-${pane.id}`}
    >
      <PaneHead stage={stage} readings={readings} model={model}>
        <PaneMenu
          title={model.title}
          scale={pane.scale}
          folded={folded}
          shown={model.shown}
          quantityRange={model.wish.quantityRange}
          range={() => drawing.current?.range ?? model.wish.quantityRange}
          onScale={(scale) => deeds.onPaneChange({ ...pane, scale })}
          onFold={() => deeds.onPaneChange({ ...pane, folded: !folded })}
          onUp={onMove === null || props.isFirst ? null : () => onMove(pane.id, -1)}
          onDown={onMove === null || props.isLast ? null : () => onMove(pane.id, 1)}
        />
      </PaneHead>
      {!folded && (
        <div className="panePaper" ref={lend}>
          <PaneCanvas stage={stage} wish={model.wish} style={CANVAS_STYLE} drawing={drawing} onSight={setSight} />
          <CursorSlider
            stage={stage}
            readings={readings}
            model={model}
            endS={setting.capture.durationS}
            describedBy={description}
            onKeyDown={(event) => deeds.onKeyDown(event, pane)}
            onPointerDown={deeds.onPointerDown}
          />
          {sight !== 'drawn' && (
            <SightWords
              sight={sight}
              onFit={() => deeds.onPaneChange({ ...pane, scale: { kind: 'auto' } })}
              onToSamples={() => deeds.onToSamples(pane)}
              onWhole={() => deeds.onCommand('view.whole')}
            />
          )}
        </div>
      )}
      <p className="unseen" id={description}>
        {words}
      </p>
    </figure>
  );
});

/** Shares are of one, and a folded pane leaves its own to the others: flex fills the height only from a sum of 1 on. */
export function growOf(share: number): number {
  return share * 100;
}

interface SightWordsProps {
  readonly sight: Exclude<PaneSight, 'drawn'>;
  onFit(): void;
  onToSamples(): void;
  onWhole(): void;
}

/** Why there is no trace to see, and the way back to it. */
function SightWords({ sight, onFit, onToSamples, onWhole }: SightWordsProps) {
  if (sight === 'failed') return <p className="sightWords">These samples did not come. They are asked for again.</p>;
  if (sight === 'noSamples') {
    return (
      <p className="sightWords">
        No samples were recorded here.
        <Button look="quiet" onPress={onToSamples}>
          To the nearest samples
        </Button>
        <Button look="quiet" onPress={onWhole}>
          Whole capture
        </Button>
      </p>
    );
  }
  return (
    <p className="sightWords">
      The trace lies {sight} this scale.
      <Button look="quiet" onPress={onFit}>
        Fit the scale
      </Button>
    </p>
  );
}
