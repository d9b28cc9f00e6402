import { windowsInOrder } from '../../core/record/inOrder.ts';
import { goToWindow } from '../actions/jump.ts';
import { acceptAllOffers, acceptOffer, markWindow, offersOfShown, putEdge } from '../actions/windows.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { chosenWindow, shownView } from '../state/selectors/shown.ts';
import { type Command, unless } from './command.ts';
import {
  firstReason,
  whileBlind,
  withoutCapture,
  withoutCursor,
  withoutEditing,
  withoutOffer,
  withoutWindow,
} from './reasons.ts';

export const WINDOW_COMMANDS: readonly Command[] = [
  unless('window.mark', editing(withoutCapture), (program) => {
    const view = shownView(program);
    if (view !== null) markWindow(program, view.visible);
  }),
  unless('window.startHere', editing(withoutWindow, withoutCursor), (program) => edgeHere(program, 'startS')),
  unless('window.endHere', editing(withoutWindow, withoutCursor), (program) => edgeHere(program, 'endS')),
  unless('window.accept', editing(withoutOffer), (program) => {
    const { selected } = program.workspace.getState();
    const offers = offersOfShown(program);
    const next = offers.find((offer) => offer.id === selected?.id) ?? offers[0];
    if (next !== undefined) acceptOffer(program, next.id);
  }),
  unless('window.acceptAll', editing(withoutOffer), (program) => acceptAllOffers(program)),
  unless('window.next', withoutWindows, (program) => goAlong(program, 1)),
  unless('window.previous', withoutWindows, (program) => goAlong(program, -1)),
  unless('window.times', editing(withoutWindow), (program) => {
    const window = chosenWindow(program);
    if (window !== null) program.dialogs.getState().show({ kind: 'windowTimes', windowId: window.id });
  }),
  unless('window.note', editing(withoutCapture), (program) => {
    const view = shownView(program);
    const { captureId } = program.workspace.getState();
    if (view === null) return;
    const startS = view.cursorS ?? (view.visible.startS + view.visible.endS) / 2;
    program.dialogs.getState().show({ kind: 'note', noteId: null, captureId, startS, endS: null });
  }),
  unless(
    'window.compare',
    (program) => {
      const windows = Object.keys(recordOf(program.record.getState())?.windows ?? {}).length;
      const few = windows < 2 ? 'Mark two windows first: one to compare with the other.' : null;
      return firstReason(whileBlind(program), few);
    },
    (program) => {
      if (program.workspace.getState().compare !== null) program.workspace.getState().set({ compare: null });
      else program.dialogs.getState().show({ kind: 'compare' });
    },
  ),
];

type ReasonOf = (program: Program) => string | null;

function editing(...reasons: readonly ReasonOf[]): ReasonOf {
  return (program) => firstReason(...reasons.map((reason) => reason(program)), withoutEditing(program));
}

function withoutWindows(program: Program): string | null {
  const windows = Object.keys(recordOf(program.record.getState())?.windows ?? {}).length;
  return windows === 0 ? 'Mark a window or accept an offer first.' : null;
}

function edgeHere(program: Program, edge: 'startS' | 'endS'): void {
  const window = chosenWindow(program);
  const cursorS = shownView(program)?.cursorS ?? null;
  if (window !== null && cursorS !== null) putEdge(program, window, edge, cursorS);
}

/** To the next window or the one before, round the end. */
function goAlong(program: Program, step: 1 | -1): void {
  const record = recordOf(program.record.getState());
  if (record === null) return;
  const order = windowsInOrder(record);
  const at = order.findIndex((window) => window.id === program.workspace.getState().windowId);
  const from = at === -1 && step === -1 ? 0 : at;
  const next = order[(from + step + order.length) % order.length];
  if (next !== undefined) goToWindow(program, next.id);
}
