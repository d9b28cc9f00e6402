// Going to something: its capture is shown, and the stretch around it where it was out of sight.

import type { Stretch } from '../../core/windows/window.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { shownView } from '../state/selectors/shown.ts';
import { showCapture } from './holdCapture.ts';

/** Shows a capture of the record, where the core holds it. */
export function goToCapture(program: Program, captureId: string): void {
  const held = program.captures.getState().held[captureId];
  if (held !== undefined) showCapture(program, captureId, held.summary);
  else program.workspace.getState().showCapture(captureId);
}

/** Selects a window and brings it into sight. */
export function goToWindow(program: Program, id: string): void {
  const window = recordOf(program.record.getState())?.windows[id];
  if (window === undefined) return;
  goToCapture(program, window.captureId);
  program.workspace.getState().select({ kind: 'window', id });
  bringIntoSight(program, window);
}

/** Selects an offer and brings it into sight; its finding is shown before it is accepted. */
export function goToOffer(program: Program, id: string, captureId: string, stretch: Stretch): void {
  goToCapture(program, captureId);
  program.workspace.getState().select({ kind: 'offer', id });
  bringIntoSight(program, stretch);
}

/** Selects a note and puts the cursor on it; a note of the vehicle is only selected. */
export function goToNote(program: Program, id: string): void {
  const note = recordOf(program.record.getState())?.notes[id];
  if (note === undefined) return;
  program.workspace.getState().select({ kind: 'note', id });
  if (note.captureId === null || note.startS === null) return;
  goToCapture(program, note.captureId);
  program.workspace.getState().cursor(note.startS);
  bringIntoSight(program, { startS: note.startS, endS: note.endS ?? note.startS });
}

/** Selects a temperature reading. */
export function goToReading(program: Program, id: string): void {
  program.workspace.getState().select({ kind: 'reading', id });
}

/** Moves the view only where the stretch is not in it; then the stretch stands in the middle with room on both sides. */
function bringIntoSight(program: Program, stretch: Stretch): void {
  const view = shownView(program);
  if (view === null) return;
  const { startS, endS } = view.visible;
  if (stretch.startS >= startS && stretch.endS <= endS) return;
  program.workspace.getState().look(around(stretch, endS - startS, shownDuration(program)), true);
}

/** The stretch with a tenth of room on both sides. */
export function withRoom(stretch: Stretch, durationS: number): Stretch {
  return around(stretch, (stretch.endS - stretch.startS) * 1.2, durationS);
}

function around({ startS, endS }: Stretch, least: number, durationS: number): Stretch {
  const width = Math.min(durationS, Math.max(least, (endS - startS) * 1.2));
  const from = Math.min(Math.max(0, (startS + endS - width) / 2), durationS - width);
  return { startS: from, endS: from + width };
}

function shownDuration(program: Program): number {
  const { captureId } = program.workspace.getState();
  return captureId === null ? 0 : (program.captures.getState().held[captureId]?.summary.durationS ?? 0);
}
