import { Fragment, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import './traces.css';
import { Button } from '../widgets/Button.tsx';
import { timeForm } from '../words/captureTimes.ts';
import { CursorLines } from './CursorLines.tsx';
import { DifferenceLine } from './DifferenceLine.tsx';
import { MarkPreview } from './MarkPreview.tsx';
import { NoteFlags } from './NoteFlags.tsx';
import { PaneSplitter } from './PaneSplitter.tsx';
import type { PaneDrawing } from './paneDrawing.ts';
import { channelsOf, type PaneSetting } from './paneModel.ts';
import { paneTitle } from './paneWords.ts';
import { CaptureReadings } from './readings.ts';
import type { Stage } from './stage.ts';
import { TimeAxis } from './TimeAxis.tsx';
import { TracePane } from './TracePane.tsx';
import { themeVariables } from './themeVariables.ts';
import type { PaneLayout, TraceSource, TraceStackProps } from './traceStackProps.ts';
import { useCrowds } from './useCrowds.ts';
import { useGestures } from './useGestures.ts';
import { useHover } from './useHover.ts';
import { usePaneKeys } from './usePaneKeys.ts';
import { useDeeds, useDragSetting, useGestureSetting, useWheelSetting } from './useStackDeeds.ts';
import { prefersStillness, useLatest, useStage } from './useStage.ts';
import { useWheel } from './useWheel.ts';
import { WindowEdges } from './WindowEdges.tsx';
import { WindowStrips } from './WindowStrips.tsx';
import { tabLanes, WindowTabs } from './WindowTabs.tsx';
import { zoomLimits } from './zoom.ts';

/** The stack of trace panes: the page. A new capture begins with a new stage. */
export function TraceStack(props: TraceStackProps) {
  return <Stack key={props.capture.key} {...props} />;
}

function Stack(props: TraceStackProps) {
  const { capture, source, panes, windows, notes, ghosts, theme, units, guides, selectedWindowId } = props;
  const root = useRef<HTMLElement>(null);
  const field = useRef<HTMLDivElement>(null);
  const stage = useStage(props.visible, timeForm(capture.durationS), field);
  const shownIds = useMemo(() => panes.flatMap((pane) => pane.channelIds), [panes]);
  const limits = useMemo(() => zoomLimits(capture, shownIds), [capture, shownIds]);
  const latest = useLatest({ ...props, limits });
  const readings = useReadings(stage, source, shownIds);
  const drawings = useRef(new Map<string, PaneDrawing>());
  const setting = useMemo<PaneSetting>(
    () => ({ capture, source, theme, units, guides, ghosts }),
    [capture, source, theme, units, guides, ghosts],
  );
  useFollowing(stage, props);
  useHover(stage, field, latest);
  useWheel(stage, root, useWheelSetting(latest, drawings));
  const { preview, onPointerDown } = useGestures(stage, field, useGestureSetting(latest));
  const onKeyDown = usePaneKeys(stage, source, latest);
  const deeds = useDeeds(stage, latest, drawings, onKeyDown, onPointerDown);
  const drag = useDragSetting(stage, limits, latest);
  const lanes = tabLanes(windows.length);
  const tabs = useCrowds(stage, windows, selectedWindowId, lanes);
  // The edges of a crowd would be a fence before the traces.
  const alone = useMemo(() => tabs.filter(({ ids }) => ids.length === 1), [tabs]);

  return (
    <section
      className="traceStack"
      ref={root}
      data-tool={props.tool}
      style={themeVariables(theme)}
      aria-label={`Traces of ${capture.name}`}
    >
      <WindowTabs
        stage={stage}
        tabs={tabs}
        lanes={lanes}
        selectedWindowId={selectedWindowId}
        drag={drag}
        onSelectWindow={drag.onClick}
        onAcceptOffer={props.onAcceptOffer}
        onVisible={props.onVisible}
      />
      <div className="traceScroll">
        <div className="traceField" ref={field}>
          <WindowStrips stage={stage} windows={windows} selectedWindowId={selectedWindowId} />
          <MarkPreview stage={stage} preview={preview} />
          {panes.map((pane, i) => (
            <Fragment key={pane.id}>
              <TracePane
                stage={stage}
                readings={readings}
                pane={pane}
                setting={setting}
                windows={windows}
                notes={notes}
                isFirst={i === 0}
                isLast={i === panes.length - 1}
                deeds={deeds}
              />
              <Splitter {...props} above={pane} below={panes[i + 1]} />
            </Fragment>
          ))}
          {panes.length === 0 && (
            <p className="sightWords">
              No channel is shown.
              <Button look="quiet" onPress={() => props.onCommand('view.channels')}>
                Choose channels
              </Button>
            </p>
          )}
          <CursorLines stage={stage} startClock={capture.startClock} />
          <WindowEdges stage={stage} windows={alone} selectedWindowId={selectedWindowId} drag={drag} />
          <NoteFlags stage={stage} notes={notes} onSelectNote={props.onSelectNote} />
        </div>
      </div>
      <TimeAxis stage={stage} theme={theme} />
      <Difference {...props} stage={stage} channelIds={shownIds} />
    </section>
  );
}

/** The stage goes where the workspace says; a step that did not begin here shows on the way where it went. */
function useFollowing(stage: Stage, { visible, cursorS, secondCursorS }: TraceStackProps): void {
  useLayoutEffect(() => stage.look(visible, !prefersStillness()), [stage, visible]);
  useLayoutEffect(() => stage.setCursor(cursorS), [stage, cursorS]);
  useLayoutEffect(() => stage.setSecondCursor(secondCursorS), [stage, secondCursorS]);
}

function useReadings(stage: Stage, source: TraceSource, channelIds: readonly string[]): CaptureReadings {
  const ids = channelIds.join('\n');
  const readings = useMemo(
    () => new CaptureReadings(stage, { source, channelIds: ids.split('\n'), within: null }),
    [stage, source, ids],
  );
  useEffect(() => () => readings.close(), [readings]);
  return readings;
}

type SplitterProps = TraceStackProps & { readonly above: PaneLayout; readonly below: PaneLayout | undefined };

function Splitter({ capture, above, below, onPaneShares, onPaneChange }: SplitterProps) {
  if (below === undefined) return null;
  const both = above.share + below.share;
  return (
    <PaneSplitter
      paneId={above.id}
      title={paneTitle(channelsOf(above.channelIds, capture), capture)}
      share={both > 0 ? above.share / both : 0.5}
      onShare={(share) => onPaneShares({ [above.id]: both * share, [below.id]: both * (1 - share) })}
      onFold={() => onPaneChange({ ...above, folded: above.folded !== true })}
    />
  );
}

function Difference(props: TraceStackProps & { readonly stage: Stage; readonly channelIds: readonly string[] }) {
  const { capture, source, cursorS, secondCursorS, stage, channelIds, onSecondCursor } = props;
  if (cursorS === null || secondCursorS === null) return null;
  return (
    <DifferenceLine
      capture={capture}
      source={source}
      channelIds={channelIds}
      cursorS={cursorS}
      secondCursorS={secondCursorS}
      digits={stage.digits}
      onDrop={() => onSecondCursor(null)}
    />
  );
}
