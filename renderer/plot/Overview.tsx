import { type PointerEvent, useMemo, useRef } from 'react';
import './traces.css';
import type { Stretch } from '../../core/windows/window.ts';
import { timeForm } from '../words/captureTimes.ts';
import { followPointer } from './followPointer.ts';
import type { OverviewProps } from './overviewProps.ts';
import { StripMarks } from './StripMarks.tsx';
import { StripTraces } from './StripTraces.tsx';
import type { Stage } from './stage.ts';
import { TimeAxis } from './TimeAxis.tsx';
import { themeVariables } from './themeVariables.ts';
import { useLatest, useStage } from './useStage.ts';
import { ViewHandle } from './ViewHandle.tsx';
import { windowAt } from './windowEdges.ts';
import { clampStretch, type ZoomLimits, zoomLimits } from './zoom.ts';

/** The strip with the whole capture, always in sight; the visible stretch is a handle on it. */
export function Overview(props: OverviewProps) {
  return <Strip key={props.capture.key} {...props} />;
}

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
