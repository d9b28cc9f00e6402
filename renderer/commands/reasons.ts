// Why a command cannot run now: one sentence each, in the words of the page, saying what to do first.

import type { Program } from '../program/program.ts';
import { readsBlind, recordOf } from '../state/recordStore.ts';
import { openOffers } from '../state/selectors/offers.ts';
import { chosenWindow, shownCapture } from '../state/selectors/shown.ts';

export function withoutVehicle(program: Program): string | null {
  return recordOf(program.record.getState()) === null ? 'Open a capture or a vehicle first.' : null;
}

export function withoutEditing(program: Program): string | null {
  const reason = withoutVehicle(program);
  if (reason !== null) return reason;
  return program.record.getState().readOnly ? 'This record was made by a newer program and can only be read.' : null;
}

export function withoutScore({ score }: Program): string | null {
  return score.getState().score === null ? 'Nothing has been scored yet.' : null;
}

export function withoutCapture(program: Program): string | null {
  return shownCapture(program) === null ? 'Open a capture first.' : null;
}

export function whileBlind({ record }: Program): string | null {
  return readsBlind(record.getState()) ? 'You are reading blind: sign your opinion first, or look now.' : null;
}

export function withoutWindow(program: Program): string | null {
  return withoutCapture(program) ?? (chosenWindow(program) === null ? 'Select a window first.' : null);
}

export function withoutCursor(program: Program): string | null {
  const reason = withoutCapture(program);
  if (reason !== null) return reason;
  const { captureId, captures } = program.workspace.getState();
  const cursorS = captures[captureId ?? '']?.cursorS ?? null;
  return cursorS === null ? 'Put the cursor on the traces first.' : null;
}

export function withoutOffer(program: Program): string | null {
  const shown = shownCapture(program);
  if (shown === null) return 'Open a capture first.';
  const blind = whileBlind(program);
  if (blind !== null) return blind;
  const open = openOffers(shown, recordOf(program.record.getState()));
  return open.length === 0 ? 'No offer is open in this capture.' : null;
}

/** The first reason that holds, or null. */
export function firstReason(...reasons: readonly (string | null)[]): string | null {
  return reasons.find((reason) => reason !== null) ?? null;
}
