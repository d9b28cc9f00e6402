// Windows: marked by hand, accepted from offers, moved, deleted. Every deed is a step of undo.

import { addWindow, addWindows, moveWindow, removeWindow } from '../../core/record/edits/windows.ts';
import { windowsInOrder } from '../../core/record/inOrder.ts';
import type { RecordWindow } from '../../core/record/schema.ts';
import type { Stretch } from '../../core/windows/window.ts';
import type { WindowDrag } from '../plot/traceStackProps.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { type Offer, openOffers } from '../state/selectors/offers.ts';
import { shownCapture } from '../state/selectors/shown.ts';
import { freeWindowName, windowName } from '../state/selectors/windowNames.ts';

/** Marks a stretch of the shown capture by hand and selects it. A stretch without a length marks nothing. */
export function markWindow(program: Program, stretch: Stretch): void {
  const shown = shownCapture(program);
  const record = recordOf(program.record.getState());
  if (shown === null || record === null) return;
  const inside = within(stretch, shown.summary.durationS);
  if (inside.endS - inside.startS <= 0) return;
  add(program, {
    id: program.newId(),
    captureId: shown.captureId,
    name: freeWindowName(record, 'mixed'),
    ...inside,
    bank: null,
    kind: 'mixed',
    origin: 'byHand',
  });
}

/** Takes an offer of the core as a window of the record and selects it. */
export function acceptOffer(program: Program, offerId: string): void {
  const record = recordOf(program.record.getState());
  const offer = offersOfShown(program).find((one) => one.id === offerId);
  if (record !== null && offer !== undefined)
    add(program, accepted(program, offer, freeWindowName(record, offer.window.kind)));
}

/** Accepts every open offer of the shown capture, as one step. */
export function acceptAllOffers(program: Program): void {
  const record = recordOf(program.record.getState());
  if (record === null) return;
  const names: string[] = [];
  const offers = offersOfShown(program);
  const windows = offers.map((offer) => {
    names.push(freeWindowName(record, offer.window.kind, names));
    return accepted(program, offer, names.at(-1) ?? '');
  });
  // What was looked at stays looked at; else a hold tells most.
  const { selected } = program.workspace.getState();
  const lookedAt = windows[offers.findIndex(({ id }) => id === selected?.id)];
  const next = lookedAt ?? windows.find(({ kind }) => kind === 'hold') ?? windows[0];
  if (next === undefined) return;
  program.record.getState().edit(addWindows(windows));
  program.workspace.getState().select({ kind: 'window', id: next.id });
  const words = windows.length === 1 ? `${windowName(next)} is marked.` : `${windows.length} windows are marked.`;
  program.notices.getState().say(words);
}

/** The open offers of the shown capture. */
export function offersOfShown(program: Program): readonly Offer[] {
  return openOffers(shownCapture(program) ?? undefined, recordOf(program.record.getState()));
}

/** A drag of a window's edge or body: one step when it ends, none when it is abandoned. */
export function dragWindow(program: Program, drag: WindowDrag): void {
  const { record, workspace } = program;
  if (drag.phase === 'start') {
    workspace.getState().select({ kind: 'window', id: drag.windowId }); // what is moved is what is looked at
    record.getState().beginGesture('move window');
  } else if (drag.phase === 'end') record.getState().endGesture();
  else if (drag.phase === 'abandon') record.getState().abandonGesture();
  else if ('stretch' in drag && drag.stretch.endS > drag.stretch.startS)
    record.getState().edit(moveWindow(drag.windowId, drag.stretch));
}

/** Puts one edge of the selected window at a time, where the window still has a length then. */
export function putEdge(program: Program, window: RecordWindow, edge: 'startS' | 'endS', timeS: number): void {
  const moved = { startS: window.startS, endS: window.endS, [edge]: timeS };
  if (moved.startS < moved.endS) program.record.getState().edit(moveWindow(window.id, moved));
  else program.notices.getState().say('A window ends after it starts. Put the cursor on the other side of the edge.');
}

/** Deletes a window and selects the one after it. */
export function deleteWindow(program: Program, id: string): void {
  const record = recordOf(program.record.getState());
  const window = record?.windows[id];
  if (record === null || window === undefined) return;
  const order = windowsInOrder(record);
  const at = order.findIndex((one) => one.id === id);
  const next = order[at + 1] ?? order[at - 1];
  program.record.getState().edit(removeWindow(id));
  program.workspace.getState().select(next === undefined ? null : { kind: 'window', id: next.id });
  program.notices.getState().say(`${windowName(window)} was deleted. Undo brings it back.`);
}

function add(program: Program, window: RecordWindow): void {
  program.record.getState().edit(addWindow(window));
  program.workspace.getState().select({ kind: 'window', id: window.id });
  program.notices.getState().say(`${windowName(window)} is marked.`);
}

function accepted(program: Program, { captureId, window }: Offer, name: string): RecordWindow {
  const { startS, endS, bank, kind } = window;
  return { id: program.newId(), captureId, name, startS, endS, bank, kind, origin: 'accepted' };
}

function within({ startS, endS }: Stretch, durationS: number): Stretch {
  return { startS: Math.max(0, startS), endS: Math.min(durationS, endS) };
}
