import { changeSettings } from '../actions/changeSettings.ts';
import { withRoom } from '../actions/jump.ts';
import { clampStretch, zoomAt, zoomLimits } from '../plot/zoom.ts';
import type { Program } from '../program/program.ts';
import { judgedStretch } from '../state/selectors/judged.ts';
import { chosenWindow, shownCapture, shownView } from '../state/selectors/shown.ts';
import { themeOf } from '../state/settingsStore.ts';
import { withOverlay } from '../workspace/firstPanes.ts';
import { always, type Command, toggle, unless } from './command.ts';
import { firstReason, whileBlind, withoutCapture, withoutCursor, withoutWindow } from './reasons.ts';

export const VIEW_COMMANDS: readonly Command[] = [
  unless('view.whole', withoutCapture, (program) => {
    const shown = shownCapture(program);
    if (shown !== null) program.workspace.getState().look({ startS: 0, endS: shown.summary.durationS }, true);
  }),
  unless('view.toWindow', withoutWindow, (program) => {
    const window = chosenWindow(program);
    const shown = shownCapture(program);
    if (window === null || shown === null) return;
    program.workspace.getState().look(withRoom(window, shown.summary.durationS), true);
  }),
  unless('view.in', withoutCapture, (program) => zoom(program, 1 / 2)),
  unless('view.out', withoutCapture, (program) => zoom(program, 2)),
  unless(
    'view.back',
    (program) =>
      firstReason(withoutCapture(program), shownView(program)?.back.length ? null : 'This is the first view.'),
    ({ workspace }) => workspace.getState().back(),
  ),
  unless(
    'view.forward',
    (program) =>
      firstReason(withoutCapture(program), shownView(program)?.forward.length ? null : 'This is the latest view.'),
    ({ workspace }) => workspace.getState().forward(),
  ),
  unless('view.toStart', withoutCapture, (program) => goToEnd(program, 'start')),
  unless('view.toEnd', withoutCapture, (program) => goToEnd(program, 'end')),
  toggle(
    'view.secondCursor',
    (program) => (shownView(program)?.secondCursorS ?? null) !== null,
    (program) => {
      const view = shownView(program);
      program.workspace.getState().secondCursor(view?.secondCursorS === null ? view.cursorS : null);
    },
    withoutCursor,
  ),
  toggle(
    'view.margins',
    ({ workspace }) => !workspace.getState().leftMargin && !workspace.getState().rightMargin,
    ({ workspace }) => {
      const { leftMargin, rightMargin, set } = workspace.getState();
      const unfold = !leftMargin && !rightMargin;
      set({ leftMargin: unfold, rightMargin: unfold });
    },
  ),
  toggle(
    'view.leftMargin',
    ({ workspace }) => workspace.getState().leftMargin,
    ({ workspace }) => workspace.getState().set({ leftMargin: !workspace.getState().leftMargin }),
  ),
  toggle(
    'view.rightMargin',
    ({ workspace }) => workspace.getState().rightMargin,
    ({ workspace }) => workspace.getState().set({ rightMargin: !workspace.getState().rightMargin }),
  ),
  toggle('view.overlay', ({ workspace }) => workspace.getState().overlay, toggleOverlay, withoutCapture),
  unless('view.channels', withoutCapture, ({ dialogs }) => dialogs.getState().show({ kind: 'channels' })),
  toggle(
    'view.guides',
    ({ settings }) => settings.getState().settings.showGuides,
    (program) => changeSettings(program, { showGuides: !program.settings.getState().settings.showGuides }),
  ),
  toggle(
    'view.ghosts',
    ({ workspace }) => workspace.getState().ghosts,
    ({ workspace }) => workspace.getState().set({ ghosts: !workspace.getState().ghosts }),
    (program) =>
      firstReason(
        withoutCapture(program),
        whileBlind(program),
        judgedStretch(program) === null ? 'Select a window or an offer first.' : null,
      ),
  ),
  toggle(
    'view.table',
    ({ workspace }) => workspace.getState().table,
    ({ workspace }) => workspace.getState().set({ table: !workspace.getState().table }),
    withoutCapture,
  ),
  always('view.fullScreen', async ({ shell }) => void (await shell.toggleFullScreen(null))),
  always('view.theme', (program) =>
    changeSettings(program, { theme: themeOf(program.settings.getState()) === 'dark' ? 'light' : 'dark' }),
  ),
];

/** About the cursor where it is in sight, else about the middle. */
function zoom(program: Program, factor: number): void {
  const shown = shownCapture(program);
  const view = shownView(program);
  if (shown === null || view === null) return;
  const { startS, endS } = view.visible;
  const { cursorS } = view;
  const anchorS = cursorS !== null && cursorS >= startS && cursorS <= endS ? cursorS : (startS + endS) / 2;
  program.workspace.getState().look(zoomAt(view.visible, anchorS, factor, limitsOf(program)), true);
}

/** The cursor goes to an end of the capture, and the view with it at the same zoom. */
function goToEnd(program: Program, end: 'start' | 'end'): void {
  const shown = shownCapture(program);
  const view = shownView(program);
  if (shown === null || view === null) return;
  const { durationS } = shown.summary;
  const width = view.visible.endS - view.visible.startS;
  const from = end === 'start' ? 0 : durationS - width;
  program.workspace.getState().cursor(end === 'start' ? 0 : durationS);
  program.workspace.getState().look(clampStretch({ startS: from, endS: from + width }, limitsOf(program)), true);
}

function limitsOf(program: Program) {
  const shown = shownCapture(program);
  if (shown === null) return { startS: 0, endS: 1, leastSpanS: 1 };
  const ids = shownView(program)?.panes.flatMap((pane) => pane.channelIds) ?? [];
  return zoomLimits(shown.summary, ids);
}

function toggleOverlay(program: Program): void {
  const shown = shownCapture(program);
  const view = shownView(program);
  const overlay = !program.workspace.getState().overlay;
  program.workspace.getState().set({ overlay });
  if (shown !== null && view !== null) {
    program.workspace.getState().panes(withOverlay(view.panes, shown.summary, overlay));
  }
}
