import { type KeyboardEvent, type PointerEvent, useCallback, useMemo, useRef } from 'react';
import './traces.css';
import type { ChannelSummary } from '../../core/bridge/coreMessages.ts';
import type { Stretch } from '../../core/windows/window.ts';
import { paneKindOf } from '../panes/index.ts';
import { timeForm } from './axisWords.ts';
import { followPointer } from './followPointer.ts';
import type { OverviewProps } from './overviewProps.ts';
import { PaneCanvas } from './PaneCanvas.tsx';
import { channelsOf, paneModel } from './paneModel.ts';
import { LEFT_GUTTER, type Stage } from './stage.ts';
import { TimeAxis } from './TimeAxis.tsx';
import { themeVariables } from './themeVariables.ts';
import type { TimeScale } from './timeScale.ts';
import { useLatest, usePlacer, useStage } from './useStage.ts';
import { placeStrip } from './WindowStrips.tsx';
import { type Edge, edgeZones, windowAt, withEdge } from './windowEdges.ts';
import { clampStretch, panBy, type ZoomLimits, zoomAt, zoomLimits } from './zoom.ts';

/** The strip with the whole capture, always in sight; the visible stretch is a handle on it. */
export function Overview(props: OverviewProps) {
  return <Strip key={props.capture.key} {...props} />;
}

const CANVAS_STYLE = { leftGutter: LEFT_GUTTER, margin: 3, timeGrid: false, valueLabels: false } as const;
/** Height of the lane in which windows and notes are marked, px. */
const MARKS_PX = 12;
const TREMBLE_PX = 3;

function Strip(props: OverviewProps) {
  const { capture, visible, windows, notes, selectedWindowId, theme } = props;
  const paper = useRef<HTMLDivElement>(null);
  const whole = useMemo<Stretch>(() => ({ startS: 0, endS: Math.max(capture.durationS, 1e-3) }), [capture]);
  const limits = useMemo(
    () =>
      zoomLimits(
        capture,
        capture.channels.map(({ id }) => id),
      ),
    [capture],
  );
  const stage = useStage(whole, timeForm(capture.durationS), paper);
  const latest = useLatest(props);
  const onPress = useStripPress(stage, paper, limits, latest);

  return (
    <section className="overview" style={themeVariables(theme)} aria-label={`Whole capture ${capture.name}`}>
      <div className="overviewPaper" ref={paper} onPointerDown={onPress}>
        <StripTraces stage={stage} {...props} />
        <StripMarks stage={stage} windows={windows} notes={notes} selectedWindowId={selectedWindowId} />
        <ViewHandle stage={stage} visible={visible} limits={limits} onVisible={props.onVisible} />
      </div>
      <TimeAxis stage={stage} theme={theme} />
    </section>
  );
}

/** Channels of one kind share a scale; each kind has the strip's whole height. */
function StripTraces(props: OverviewProps & { readonly stage: Stage }) {
  const { stage, capture, source, channelIds, theme } = props;
  const ids = channelIds.join('\n');
  const models = useMemo(() => {
    const setting = { capture, source, theme, units: undefined, guides: false, ghosts: [] };
    return byKind(channelsOf(ids.split('\n'), capture)).map((group) => {
      const id = group[0]?.id ?? 'none';
      const layout = {
        id,
        channelIds: group.map((channel) => channel.id),
        share: 1,
        scale: { kind: 'quantity' },
      } as const;
      const { wish } = paneModel(layout, setting);
      return { id, wish: { ...wish, traces: wish.traces.map((trace) => ({ ...trace, width: 1, dash: [] })) } };
    });
  }, [ids, capture, source, theme]);
  return (
    <div className="overviewCanvas">
      {models.map(({ id, wish }) => (
        <PaneCanvas key={id} stage={stage} wish={wish} style={CANVAS_STYLE} />
      ))}
    </div>
  );
}

function byKind(channels: readonly ChannelSummary[]): ChannelSummary[][] {
  const groups = new Map<string, ChannelSummary[]>();
  for (const channel of channels) {
    const kind = channel.role === 'other' ? channel.id : paneKindOf(channel.role).id;
    groups.set(kind, [...(groups.get(kind) ?? []), channel]);
  }
  return [...groups.values()];
}

type StripMarksProps = Pick<OverviewProps, 'windows' | 'notes' | 'selectedWindowId'> & { readonly stage: Stage };

function StripMarks({ stage, windows, notes, selectedWindowId }: StripMarksProps) {
  const layer = useRef<HTMLDivElement>(null);
  const place = useCallback(
    (scale: TimeScale): void => {
      const marks = layer.current?.children ?? [];
      const stretches = [...windows, ...notes.map(({ startS, endS }) => ({ startS, endS: endS ?? startS }))];
      stretches.forEach(({ startS, endS }, i) => {
        const mark = marks[i];
        if (mark instanceof HTMLElement) placeStrip(mark, scale, startS, endS);
      });
    },
    [windows, notes],
  );
  usePlacer(stage, place);
  return (
    <div className="overviewMarks" ref={layer} aria-hidden="true">
      {windows.map(({ id, offer }) => (
        <span
          key={id}
          className={`overviewMark${offer ? ' offer' : ''}${id === selectedWindowId ? ' selected' : ''}`}
        />
      ))}
      {notes.map(({ id }) => (
        <span key={id} className="overviewMark note" />
      ))}
    </div>
  );
}

interface ViewHandleProps {
  readonly stage: Stage;
  readonly visible: Stretch;
  readonly limits: ZoomLimits;
  onVisible(stretch: Stretch, step: boolean): void;
}

/** Least width of the handle as a thing to grab, px; what is drawn may be narrower. */
const LEAST_HANDLE_PX = 24;

/** The visible stretch: a body that is moved and two edges that are stretched, each by pointer or by key. */
function ViewHandle({ stage, visible, limits, onVisible }: ViewHandleProps) {
  const layer = useRef<HTMLDivElement>(null);
  const place = useCallback(
    (scale: TimeScale): void => {
      const box = layer.current;
      if (box === null) return;
      const startX = scale.clampX(scale.xOf(visible.startS));
      const endX = scale.clampX(scale.xOf(visible.endS));
      const spare = Math.max(0, LEAST_HANDLE_PX - (endX - startX)) / 2;
      const zones = edgeZones(startX - spare, endX + spare);
      const set = (name: string, px: number): void => box.style.setProperty(name, `${px}px`);
      set('--start', startX);
      set('--end', endX);
      set('--body-start', startX - spare);
      set('--body-end', endX + spare);
      set('--start-zone', zones.start);
      set('--end-zone', zones.end);
    },
    [visible],
  );
  usePlacer(stage, place);

  const drag = (grip: Edge | 'body') => (event: PointerEvent<HTMLElement>) => {
    const { scale } = stage;
    if (event.button !== 0 || scale === null) return;
    event.stopPropagation();
    const fromX = event.clientX;
    const moved = (clientX: number): Stretch =>
      gripped(visible, grip, (clientX - fromX) * scale.secondsPerPixel, limits);
    followPointer(event.currentTarget, event.nativeEvent, {
      move: (at) => onVisible(moved(at.clientX), false),
      up: (at) => onVisible(moved(at.clientX), true),
      abandon: () => onVisible(visible, true),
    });
  };
  const key = (grip: Edge | 'body') => (event: KeyboardEvent<HTMLElement>) => {
    const next = keyed(event.key, grip, visible, limits, stage.scale?.secondsPerPixel ?? 0);
    if (next === null || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    onVisible(next, true);
  };
  const edge = (which: Edge) => (
    <div
      className={`viewEdge ${which}`}
      role="slider"
      tabIndex={0}
      aria-label={which === 'start' ? 'Start of what is visible' : 'End of what is visible'}
      aria-orientation="horizontal"
      aria-valuemin={limits.startS}
      aria-valuemax={limits.endS}
      aria-valuenow={which === 'start' ? visible.startS : visible.endS}
      aria-valuetext={stage.moment(which === 'start' ? visible.startS : visible.endS)}
      onPointerDown={drag(which)}
      onKeyDown={key(which)}
    />
  );

  return (
    <div className="viewHandle" ref={layer}>
      <span className="viewVeil before" />
      <span className="viewVeil after" />
      {edge('start')}
      <div
        className="viewBody"
        role="slider"
        tabIndex={0}
        aria-label="Visible stretch"
        aria-orientation="horizontal"
        aria-valuemin={limits.startS}
        aria-valuemax={limits.endS}
        aria-valuenow={visible.startS}
        aria-valuetext={`${stage.moment(visible.startS)} to ${stage.moment(visible.endS)}`}
        onPointerDown={drag('body')}
        onKeyDown={key('body')}
      />
      {edge('end')}
    </div>
  );
}

function gripped(visible: Stretch, grip: Edge | 'body', byS: number, limits: ZoomLimits): Stretch {
  if (grip === 'body') return panBy(visible, byS, limits);
  return withEdge(visible, grip, visible[grip === 'start' ? 'startS' : 'endS'] + byS, limits, limits.leastSpanS);
}

/** Keys of the handle: arrows by a tenth of the view or a pixel of the strip, Page by the view, Home and End, + and −. */
function keyed(key: string, grip: Edge | 'body', visible: Stretch, limits: ZoomLimits, pixelS: number): Stretch | null {
  const span = visible.endS - visible.startS;
  const whole = limits.endS - limits.startS;
  const small = grip === 'body' ? span / 10 : pixelS;
  const large = grip === 'body' ? span : 10 * pixelS;
  const ways: Readonly<Record<string, number>> = {
    ArrowLeft: -small,
    ArrowDown: -small,
    ArrowRight: small,
    ArrowUp: small,
    PageUp: -large,
    PageDown: large,
    Home: -whole,
    End: whole,
  };
  const byS = ways[key];
  if (byS !== undefined) return gripped(visible, grip, byS, limits);
  const middleS = (visible.startS + visible.endS) / 2;
  if (key === '+' || key === '=') return zoomAt(visible, middleS, 1 / 1.5, limits);
  return key === '-' || key === '−' ? zoomAt(visible, middleS, 1.5, limits) : null;
}

/** A press beside the handle brings the view there and carries it along; a press on a mark chooses its window. */
function useStripPress(
  stage: Stage,
  paper: { readonly current: HTMLElement | null },
  limits: ZoomLimits,
  latest: { readonly current: OverviewProps },
) {
  return (event: PointerEvent<HTMLElement>): void => {
    const { scale } = stage;
    const box = paper.current?.getBoundingClientRect();
    if (event.button !== 0 || scale === null || box === undefined) return;
    const { visible, windows, selectedWindowId } = latest.current;
    const timeAt = (clientX: number): number => scale.timeOf(scale.clampX(clientX - box.left));
    const marked =
      event.clientY - box.top < MARKS_PX ? windowAt(windows, timeAt(event.clientX), selectedWindowId) : null;
    const fromX = event.clientX;
    const half = (visible.endS - visible.startS) / 2;
    const centred = (clientX: number): Stretch => {
      const timeS = timeAt(clientX);
      return clampStretch({ startS: timeS - half, endS: timeS + half }, limits);
    };
    let moved = false;
    followPointer(event.currentTarget, event.nativeEvent, {
      move: (at) => {
        moved ||= Math.abs(at.clientX - fromX) > TREMBLE_PX;
        if (moved) latest.current.onVisible(centred(at.clientX), false);
      },
      up: (at) => {
        if (!moved && marked !== null) latest.current.onSelectWindow(marked.id);
        else latest.current.onVisible(centred(at.clientX), true);
      },
      abandon: () => latest.current.onVisible(visible, true),
    });
  };
}
