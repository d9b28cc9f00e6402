import { useMemo } from 'react';
import { useStore } from 'zustand';
import { goToNote, goToWindow } from '../actions/jump.ts';
import { acceptOffer, dragWindow, markWindow } from '../actions/windows.ts';
import { runCommand } from '../commands/runCommand.ts';
import { Overview } from '../plot/Overview.tsx';
import { TraceStack } from '../plot/TraceStack.tsx';
import type { PaneLayout, TraceStackProps } from '../plot/traceStackProps.ts';
import type { Program } from '../program/program.ts';
import { useProgram } from '../program/programContext.ts';
import type { HeldCapture } from '../state/captureStore.ts';
import { recordOf } from '../state/recordStore.ts';
import { shownNotes, shownWindows } from '../state/selectors/onTraces.ts';
import { themeOf } from '../state/settingsStore.ts';
import { firstView } from './firstPanes.ts';

/** The panes of the shown capture with everything that lies on them, and the strip with the whole of it. */
export function Traces({ held }: { readonly held: HeldCapture }) {
  const program = useProgram();
  const { workspace } = program;
  const record = useStore(program.record, recordOf);
  const score = useStore(program.score, (state) => state.score);
  const model = useStore(program.score, (state) => state.model);
  const kept = useStore(workspace, (state) => state.captures[held.captureId]);
  const overlay = useStore(workspace, (state) => state.overlay);
  const windowId = useStore(workspace, (state) => state.windowId);
  const selected = useStore(workspace, (state) => state.selected);
  const tool = useStore(workspace, (state) => state.tool);
  const settings = useStore(program.settings);
  const view = useMemo(() => kept ?? firstView(held.summary, overlay), [kept, held.summary, overlay]);
  const windows = useMemo(() => shownWindows(held, record, score), [held, record, score]);
  const notes = useMemo(() => shownNotes(held.captureId, record), [held.captureId, record]);
  const deeds = useMemo(() => deedsOf(program, held), [program, held]);
  const { settings: chosen } = settings;
  const units = useMemo(
    () => ({ temperature: chosen.temperatureUnit, speed: chosen.speedUnit }),
    [chosen.temperatureUnit, chosen.speedUnit],
  );
  const shared = {
    capture: held.summary,
    source: held.source,
    visible: view.visible,
    windows,
    notes,
    selectedWindowId: selected?.kind === 'offer' ? selected.id : windowId,
    cursorS: view.cursorS,
    theme: themeOf(settings),
    onVisible: deeds.onVisible,
    onSelectWindow: deeds.onSelectWindow,
    onSelectNote: deeds.onSelectNote,
  };
  return (
    <>
      <TraceStack
        {...shared}
        {...deeds}
        panes={view.panes}
        ghosts={model}
        secondCursorS={view.secondCursorS}
        tool={tool}
        guides={chosen.showGuides}
        wheel={chosen.wheel}
        units={units}
      />
      <Overview {...shared} channelIds={view.panes[0]?.channelIds ?? []} />
    </>
  );
}

type Deeds = Pick<
  TraceStackProps,
  | 'onVisible'
  | 'onCursor'
  | 'onSecondCursor'
  | 'onMark'
  | 'onSelectWindow'
  | 'onAcceptOffer'
  | 'onWindowDrag'
  | 'onNoteAt'
  | 'onSelectNote'
  | 'onPaneShares'
  | 'onPaneChange'
  | 'onPaneOrder'
  | 'onCommand'
>;

function deedsOf(program: Program, { captureId }: HeldCapture): Required<Deeds> {
  const { workspace, dialogs } = program;
  const panes = (): readonly PaneLayout[] => workspace.getState().captures[captureId]?.panes ?? [];
  return {
    onVisible: (stretch, step) => workspace.getState().look(stretch, step),
    onCursor: (timeS) => workspace.getState().cursor(timeS),
    onSecondCursor: (timeS) => workspace.getState().secondCursor(timeS),
    onMark: (stretch) => markWindow(program, stretch),
    onSelectWindow: (id) => {
      if (id.includes('/')) workspace.getState().select({ kind: 'offer', id });
      else goToWindow(program, id);
    },
    onAcceptOffer: (id) => acceptOffer(program, id),
    onWindowDrag: (drag) => dragWindow(program, drag),
    onNoteAt: (startS, endS) => dialogs.getState().show({ kind: 'note', noteId: null, captureId, startS, endS }),
    onSelectNote: (id) => goToNote(program, id),
    onPaneShares: (shares) =>
      workspace.getState().panes(panes().map((pane) => ({ ...pane, share: shares[pane.id] ?? pane.share }))),
    onPaneChange: (pane) => workspace.getState().panes(panes().map((one) => (one.id === pane.id ? pane : one))),
    onPaneOrder: (ids) =>
      workspace.getState().panes([...panes()].sort((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id))),
    onCommand: (id) => runCommand(program, id),
  };
}
