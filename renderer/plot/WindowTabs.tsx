import { Plus, ZoomIn } from 'lucide-react';
import { memo, type PointerEvent, useMemo, useRef } from 'react';
import { FINDING_WORDS } from '../../core/evidence/words/terms.ts';
import { FindingSign } from '../widgets/Sign.tsx';
import type { TabSubject } from './crowds.ts';
import type { Stage } from './stage.ts';
import { layTabs } from './tabLayout.ts';
import type { TimeScale } from './timeScale.ts';
import type { ShownWindow, TraceStackProps } from './traceStackProps.ts';
import { usePlacer } from './useStage.ts';
import { type DragSetting, dragWindow, keyWindow } from './windowDrag.ts';
import { clampStretch } from './zoom.ts';

interface WindowTabsProps {
  readonly stage: Stage;
  /** Windows and offers, crowded ones joined. */
  readonly tabs: readonly TabSubject[];
  readonly lanes: number;
  readonly selectedWindowId: string | null;
  readonly drag: DragSetting;
  onSelectWindow(id: string): void;
  onAcceptOffer(id: string): void;
  readonly onVisible: TraceStackProps['onVisible'];
}

export const TAB_PX = 28;
/** With so many windows and offers their tabs get a second lane. */
const SECOND_LANE_FROM = 4;

export function tabLanes(count: number): number {
  return count >= SECOND_LANE_FROM ? 2 : 1;
}

/** The tabs of windows and offers, above the panes: name and finding, in words and with a sign. */
export const WindowTabs = memo(function WindowTabs(props: WindowTabsProps) {
  const { stage, tabs: windows, lanes, selectedWindowId, drag } = props;
  const rail = useRef<HTMLDivElement>(null);

  const place = useMemo(() => {
    // Measured again when another is selected: its words are bolder, and wider.
    let widths: readonly number[] | null = null;
    return (scale: TimeScale): void => {
      const tabs = rail.current?.children ?? [];
      widths ??= windows.map((_, i) => naturalWidth(tabs[i]));
      const known = widths;
      const wishes = windows.map(({ id, startS, endS }, i) => ({
        id,
        startX: scale.xOf(startS),
        endX: scale.xOf(endS),
        width: known[i] ?? 0,
        first: id === selectedWindowId,
      }));
      const places = new Map(
        layTabs(wishes, scale.left, scale.left + scale.width, lanes).map((each) => [each.id, each]),
      );
      windows.forEach(({ id }, i) => {
        const tab = tabs[i];
        const there = places.get(id);
        if (!(tab instanceof HTMLElement)) return;
        tab.style.visibility = there === undefined ? 'hidden' : '';
        if (there === undefined) return;
        tab.style.transform = `translate(${there.left}px, ${(lanes - 1 - there.lane) * TAB_PX}px)`;
        tab.style.width = `${there.width}px`;
        tab.style.setProperty('--stem', `${there.lane * TAB_PX}px`);
        tab.style.zIndex = `${lanes - there.lane}`; // a stem passes behind the words of the lane below
      });
    };
  }, [windows, selectedWindowId, lanes]);
  usePlacer(stage, place);

  return (
    <div className="windowTabs" ref={rail} style={{ height: lanes * TAB_PX }}>
      {windows.map((window) =>
        window.ids.length > 1 ? (
          <CrowdTab key={window.id} crowd={window} {...props} />
        ) : window.offer ? (
          <OfferTab key={window.id} window={window} selected={window.id === selectedWindowId} {...props} />
        ) : (
          <WindowTab key={window.id} window={window} selected={window.id === selectedWindowId} {...props} drag={drag} />
        ),
      )}
    </div>
  );
});

interface TabProps extends WindowTabsProps {
  readonly window: ShownWindow;
  readonly selected: boolean;
}

function WindowTab({ stage, window, selected, drag, onSelectWindow }: TabProps) {
  const words = window.finding === null ? '' : FINDING_WORDS[window.finding].toLowerCase();
  const span = `${stage.moment(window.startS)} to ${stage.moment(window.endS)}`;
  const moving = useRef(false);
  const end = (): void => {
    if (moving.current) drag.onWindowDrag({ phase: 'end', windowId: window.id });
    moving.current = false;
  };
  return (
    <button
      type="button"
      className={selected ? 'windowTab selected' : 'windowTab'}
      aria-pressed={selected}
      aria-label={`${window.name}${words === '' ? '' : `, ${words}`}, ${span}`}
      title={`${window.name}${words === '' ? '' : `: ${words}`} (${span}). Drag it, or press the arrow keys, to move the window.`}
      onPointerDown={(event: PointerEvent<HTMLElement>) => dragWindow(event, window, 'body', drag)}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === ' ') onSelectWindow(window.id);
        else if (event.ctrlKey || event.metaKey || event.altKey || !keyWindow(event, window, 'body', drag)) return;
        else moving.current = true;
        event.preventDefault();
        event.stopPropagation();
      }}
      onKeyUp={end}
      onBlur={end}
    >
      <span className="tabWords">
        {window.finding !== null && <FindingSign finding={window.finding} size={16} />}
        <span className="tabName">{window.name}</span>
        {words !== '' && <span className="tabFinding">{words}</span>}
      </span>
    </button>
  );
}

function OfferTab({ stage, window, selected, onAcceptOffer }: TabProps) {
  const span = `${stage.moment(window.startS)} to ${stage.moment(window.endS)}`;
  return (
    <button
      type="button"
      className={selected ? 'windowTab offer selected' : 'windowTab offer'}
      aria-label={`Accept offer ${window.name}, ${span}`}
      title={`Accept ${window.name} (${span}) as a window`}
      onClick={() => onAcceptOffer(window.id)}
    >
      <span className="tabWords">
        <Plus size={14} strokeWidth={1.8} aria-hidden="true" />
        <span className="tabName">{window.name}</span>
      </span>
    </button>
  );
}

/** Room beside a crowd that is looked at, as a share of its length. */
const CROWD_MARGIN = 0.08;

/** Windows or offers too close together to be told apart here; the tab goes near enough to see each. */
function CrowdTab({ stage, crowd, drag, onVisible }: WindowTabsProps & { readonly crowd: TabSubject }) {
  const span = `${stage.moment(crowd.startS)} to ${stage.moment(crowd.endS)}`;
  const margin = (crowd.endS - crowd.startS) * CROWD_MARGIN;
  const near = clampStretch({ startS: crowd.startS - margin, endS: crowd.endS + margin }, drag.limits);
  return (
    <button
      type="button"
      className={crowd.offer ? 'windowTab offer' : 'windowTab'}
      aria-label={`Look at ${crowd.name}, ${span}`}
      title={`${crowd.name} (${span}): look at them from near`}
      onClick={() => onVisible(near, true)}
    >
      <span className="tabWords">
        <ZoomIn size={14} strokeWidth={1.8} aria-hidden="true" />
        <span className="tabName">{crowd.name}</span>
      </span>
    </button>
  );
}

/** Width at which a tab says everything: of its words, and the room beside them. */
function naturalWidth(tab: Element | undefined): number {
  const words = tab?.firstElementChild;
  return words instanceof HTMLElement ? words.scrollWidth + 18 : 0;
}
