import { type KeyboardEvent, useEffect, useId, useLayoutEffect, useMemo, useRef } from 'react';
import './traces.css';
import { ComparePane } from './ComparePane.tsx';
import { CursorLines } from './CursorLines.tsx';
import { type CompareSetting, compareLimits, compareShifts } from './compareModel.ts';
import type { ComparedPane, ComparedSide, CompareStackProps } from './compareStackProps.ts';
import { OffsetRail } from './OffsetRail.tsx';
import { paneKeyDeed } from './paneKeys.ts';
import { CaptureReadings, PairedReadings } from './readings.ts';
import type { Stage } from './stage.ts';
import { TimeAxis } from './TimeAxis.tsx';
import { themeVariables } from './themeVariables.ts';
import { useGestures } from './useGestures.ts';
import { useHover } from './useHover.ts';
import { prefersStillness, useLatest, useStage } from './useStage.ts';
import { useWheel } from './useWheel.ts';
import { panBy, zoomAt } from './zoom.ts';

/** Two windows over each other on one time axis that counts from the start of each. */
export function CompareStack(props: CompareStackProps) {
  const { first, second, panes, offsetS, visible, cursorS, guides, theme, units } = props;
  const root = useRef<HTMLElement>(null);
  const field = useRef<HTMLDivElement>(null);
  const description = useId();
  const stage = useStage(visible, 's', field);
  const setting = useMemo<CompareSetting>(
    () => ({ first, second, guides, theme, ...(units === undefined ? {} : { units }) }),
    [first, second, guides, theme, units],
  );
  const limits = useMemo(() => compareLimits(setting, panes, offsetS), [setting, panes, offsetS]);
  const [firstShiftS, secondShiftS] = compareShifts(first, second, offsetS);
  const latest = useLatest({ ...props, limits });
  const readings = useSides(stage, first, second, panes, firstShiftS, secondShiftS);

  useLayoutEffect(() => stage.look(visible, !prefersStillness()), [stage, visible]);
  useLayoutEffect(() => stage.setCursor(cursorS), [stage, cursorS]);
  useHover(stage, field, latest);
  const still = useLatest({
    tool: 'pan' as const,
    limits,
    wheel: props.wheel,
    onVisible: props.onVisible,
    onMark: () => undefined,
    onNoteAt: () => undefined,
    onSecondCursor: () => undefined,
    onClick: () => undefined,
    onValueZoom: () => undefined,
  });
  useWheel(stage, root, still);
  const { onPointerDown } = useGestures(stage, field, still);
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    if (event.defaultPrevented || !doKey(event, stage, latest.current)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <section
      className="compareStack"
      ref={root}
      data-tool="pan"
      style={themeVariables(theme)}
      aria-label={`${first.label} and ${second.label}`}
    >
      <OffsetRail stage={stage} first={first} second={second} offsetS={offsetS} onOffset={props.onOffset} />
      <div className="traceScroll">
        <div className="traceField" ref={field}>
          {panes.map((pane) => (
            <ComparePane
              key={pane.id}
              stage={stage}
              pane={pane}
              setting={setting}
              firstShiftS={firstShiftS}
              secondShiftS={secondShiftS}
              readings={readings}
              endS={limits.endS}
              describedBy={description}
              onKeyDown={onKeyDown}
              onPointerDown={onPointerDown}
            />
          ))}
          <CursorLines stage={stage} startClock={null} />
        </div>
      </div>
      <TimeAxis stage={stage} theme={theme} />
      <p className="unseen" id={description}>
        {`${first.label}: ${first.capture.name}. ${second.label}: ${second.capture.name}, drawn broken. Both from the start of their windows.`}
      </p>
    </section>
  );
}

/** The values of both sides under the cursor. */
function useSides(
  stage: Stage,
  first: ComparedSide,
  second: ComparedSide,
  panes: readonly ComparedPane[],
  firstShiftS: number,
  secondShiftS: number,
): PairedReadings {
  const sides = useMemo(() => {
    const one = new CaptureReadings(stage, {
      source: first.source,
      channelIds: panes.flatMap((pane) => pane.firstChannelIds),
      within: first.window,
    });
    const other = new CaptureReadings(stage, {
      source: second.source,
      channelIds: panes.flatMap((pane) => pane.secondChannelIds),
      within: second.window,
    });
    return { one, other, paired: new PairedReadings(one, other) };
  }, [stage, first, second, panes]);
  useEffect(
    () => () => {
      sides.one.close();
      sides.other.close();
    },
    [sides],
  );
  useEffect(() => {
    sides.one.setShift(firstShiftS);
    sides.other.setShift(secondShiftS);
  }, [sides, firstShiftS, secondShiftS]);
  return sides.paired;
}

type KeyPlace = CompareStackProps & { readonly limits: ReturnType<typeof compareLimits> };

/** The cursor by pixels, zoom and pan; a comparison has no samples of its own to step through. */
function doKey(event: KeyboardEvent<HTMLElement>, stage: Stage, how: KeyPlace): boolean {
  const deed = paneKeyDeed(event);
  const { visible, scale } = stage;
  const middleS = (visible.startS + visible.endS) / 2;
  if (deed === null || scale === null) return false;
  const look = (stretch: typeof visible): void => {
    stage.look(stretch, false);
    how.onVisible(stretch, true);
  };
  switch (deed.kind) {
    case 'step': {
      const timeS = (how.cursorS ?? middleS) + deed.direction * deed.count * scale.secondsPerPixel;
      how.onCursor(Math.min(how.limits.endS, Math.max(how.limits.startS, timeS)));
      return true;
    }
    case 'zoom':
      look(zoomAt(visible, how.cursorS ?? middleS, deed.factor, how.limits));
      return true;
    case 'pan':
      look(panBy(visible, deed.screens * (visible.endS - visible.startS), how.limits));
      return true;
    case 'end':
      look(panBy(visible, deed.direction * (how.limits.endS - how.limits.startS), how.limits));
      return true;
    case 'stop':
    case 'drop':
      return false;
  }
}
