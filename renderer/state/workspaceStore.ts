import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Stretch } from '../../core/windows/window.ts';
import type { PaneLayout } from '../plot/traceStackProps.ts';
import { type CaptureView, FRESH_VIEW, type Selection, type ViewState } from './viewState.ts';

/** Views that can be gone back to, per capture. */
export const VIEWS_KEPT = 50;

/**
 * What is only view: never part of the record, never undone, kept per vehicle. Every member of ViewState is saved as
 * it stands; the deeds below are the only ones that change it.
 */
export interface WorkspaceState extends ViewState {
  /** Puts back a kept view, or a fresh one. */
  restore(view: ViewState): void;
  /** Shows a capture; `begin` is how it is looked at where it was never looked at before. */
  showCapture(captureId: string | null, begin?: CaptureView): void;
  /** Moves the visible stretch. A `step` joins the back list; what comes between two steps does not. */
  look(visible: Stretch, step: boolean): void;
  back(): void;
  forward(): void;
  cursor(timeS: number | null): void;
  secondCursor(timeS: number | null): void;
  panes(panes: readonly PaneLayout[]): void;
  select(selected: Selection | null): void;
  forgetCapture(captureId: string): void;
  set(change: Partial<Switches>): void;
}

/** Members that any deed may set directly, because nothing else hangs on them. */
export type Switches = Pick<
  ViewState,
  'tool' | 'leftMargin' | 'rightMargin' | 'overlay' | 'table' | 'ghosts' | 'report' | 'compare'
>;

export type WorkspaceStore = StoreApi<WorkspaceState>;

export function createWorkspaceStore(): WorkspaceStore {
  /** Where the gesture under way began, so that a drag is one step back and not hundreds. */
  let gestureFrom: Stretch | null = null;

  return createStore<WorkspaceState>()((set, get) => {
    const changeView = (change: (view: CaptureView) => CaptureView): void => {
      const { captureId, captures } = get();
      const view = captureId === null ? undefined : captures[captureId];
      if (captureId === null || view === undefined) return;
      set({ captures: { ...captures, [captureId]: change(view) } });
    };

    return {
      ...FRESH_VIEW,
      restore: (view) => {
        gestureFrom = null;
        set(view);
      },
      showCapture: (captureId, begin) => {
        gestureFrom = null;
        const { captures } = get();
        const known = captureId === null || captures[captureId] !== undefined || begin === undefined;
        set({ captureId, captures: known ? captures : { ...captures, [captureId]: begin } });
      },
      look: (visible, step) => {
        changeView((view) => {
          if (!step) {
            gestureFrom ??= view.visible;
            return { ...view, visible };
          }
          const from = gestureFrom ?? view.visible;
          gestureFrom = null;
          if (sameStretch(from, visible)) return { ...view, visible };
          return { ...view, visible, back: [...view.back, from].slice(-VIEWS_KEPT), forward: [] };
        });
      },
      back: () => {
        gestureFrom = null;
        changeView((view) => {
          const before = view.back.at(-1);
          if (before === undefined) return view;
          const forward = [view.visible, ...view.forward].slice(0, VIEWS_KEPT);
          return { ...view, visible: before, back: view.back.slice(0, -1), forward };
        });
      },
      forward: () => {
        gestureFrom = null;
        changeView((view) => {
          const after = view.forward[0];
          if (after === undefined) return view;
          const back = [...view.back, view.visible].slice(-VIEWS_KEPT);
          return { ...view, visible: after, back, forward: view.forward.slice(1) };
        });
      },
      cursor: (cursorS) => changeView((view) => ({ ...view, cursorS })),
      secondCursor: (secondCursorS) => changeView((view) => ({ ...view, secondCursorS })),
      panes: (panes) => changeView((view) => ({ ...view, panes: panes.map(plainPane) })),
      select: (selected) => {
        const windowId = selected?.kind === 'window' ? selected.id : get().windowId;
        const judged = selected?.kind === 'window' || selected?.kind === 'offer';
        set({ selected, windowId, report: judged ? 'window' : get().report });
      },
      forgetCapture: (captureId) => {
        const { [captureId]: _gone, ...captures } = get().captures;
        set({ captures, captureId: get().captureId === captureId ? null : get().captureId });
      },
      set: (change) => set(change),
    };
  });
}

/** The members that are kept between starts. */
export function viewStateOf(state: WorkspaceState): ViewState {
  const { version, captureId, captures, selected, windowId, tool, leftMargin, rightMargin } = state;
  const { overlay, table, ghosts, report, compare } = state;
  const margins = { leftMargin, rightMargin };
  return {
    version,
    captureId,
    captures,
    selected,
    windowId,
    tool,
    ...margins,
    overlay,
    table,
    ghosts,
    report,
    compare,
  };
}

function sameStretch(one: Stretch, other: Stretch): boolean {
  return one.startS === other.startS && one.endS === other.endS;
}

function plainPane({ id, channelIds, share, scale, folded }: PaneLayout): CaptureView['panes'][number] {
  return { id, channelIds: [...channelIds], share, scale, ...(folded === undefined ? {} : { folded }) };
}
