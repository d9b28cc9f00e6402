import { Fragment, type RefObject, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import './traces.css';
import { timeForm } from './axisWords.ts';
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
import { type PaneDeeds, TracePane } from './TracePane.tsx';
import { themeVariables } from './themeVariables.ts';
import type { PaneLayout, TraceSource, TraceStackProps } from './traceStackProps.ts';
import { useGestures } from './useGestures.ts';
import { useHover } from './useHover.ts';
import { usePaneKeys } from './usePaneKeys.ts';
import { prefersStillness, useLatest, useStage } from './useStage.ts';
import { useWheel } from './useWheel.ts';
import { zoomValues } from './valueZoom.ts';
import { WindowEdges } from './WindowEdges.tsx';
import { WindowStrips } from './WindowStrips.tsx';
import { WindowTabs } from './WindowTabs.tsx';
import { windowAt } from './windowEdges.ts';
import { showTime, type ZoomLimits, zoomLimits } from './zoom.ts';

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
  const drag = useMemo(
    () => ({
      stage,
      limits,
      onWindowDrag: (drag: Parameters<TraceStackProps['onWindowDrag']>[0]) => latest.current.onWindowDrag(drag),
      onClick: (id: string) => latest.current.onSelectWindow(id),
    }),
    [stage, limits, latest],
  );

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
        windows={windows}
        selectedWindowId={selectedWindowId}
        drag={drag}
        onSelectWindow={drag.onClick}
        onAcceptOffer={props.onAcceptOffer}
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
          <CursorLines stage={stage} startClock={capture.startClock} />
          <WindowEdges stage={stage} windows={windows} selectedWindowId={selectedWindowId} drag={drag} />
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

type Latest = RefObject<TraceStackProps & { readonly limits: ZoomLimits }>;
type Drawings = RefObject<Map<string, PaneDrawing>>;

function useWheelSetting(latest: Latest, drawings: Drawings) {
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

function useGestureSetting(latest: Latest) {
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

function useDeeds(
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
