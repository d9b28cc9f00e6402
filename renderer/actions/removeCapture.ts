import { removeCapture as removeCaptureEdit } from '../../core/record/edits/captures.ts';
import type { Program } from '../program/program.ts';
import { readsBlind, recordOf } from '../state/recordStore.ts';
import { goToCapture } from './jump.ts';

/**
 * Takes a capture off the vehicle, with what was marked on it; the file stays where it is. The core goes on holding
 * it, so that undo brings everything back at once.
 */
export function removeCapture(program: Program, captureId: string): void {
  const { record, workspace, notices } = program;
  const name = recordOf(record.getState())?.captures[captureId]?.name;
  if (name === undefined) return;
  if (readsBlind(record.getState())) {
    notices.getState().say('Captures stay while you read blind: what is hidden on them would go with them.');
    return;
  }
  record.getState().edit(removeCaptureEdit(captureId));
  if (workspace.getState().captureId === captureId) {
    const left = Object.values(recordOf(record.getState())?.captures ?? {})[0];
    if (left === undefined) workspace.getState().showCapture(null);
    else goToCapture(program, left.id);
  }
  notices.getState().say(`${name} was taken off the vehicle; the file stays where it is. Undo brings it back.`);
}
