// Undo and redo change the record alone. What hangs on it, the capture that is shown and the columns it was read with,
// follows here.

import { capturesInOrder } from '../../core/record/inOrder.ts';
import { sameValue } from '../../core/record/sameValue.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { reopenCapture } from './findCaptures.ts';
import { goToCapture } from './jump.ts';

/** Begins to watch the record. The returned function stops it. */
export function keepInStep(program: Program): () => void {
  const rereading = new Set<string>();
  return program.record.subscribe((now, before) => {
    const record = recordOf(now);
    if (record === null || record.captures === recordOf(before)?.captures) return;
    showOneOf(program, record);
    for (const captureId of otherColumns(program, record)) {
      if (rereading.has(captureId)) continue;
      rereading.add(captureId);
      void reread(program, captureId).finally(() => rereading.delete(captureId));
    }
  });
}

/** A capture that was taken off is no longer shown; another one is. */
function showOneOf(program: Program, record: VehicleRecord): void {
  const { captureId } = program.workspace.getState();
  if (captureId !== null && record.captures[captureId] !== undefined) return;
  const other = capturesInOrder(record).find((capture) => program.captures.getState().held[capture.id] !== undefined);
  if (other !== undefined) goToCapture(program, other.id);
  else if (captureId !== null) program.workspace.getState().showCapture(null);
}

function otherColumns(program: Program, record: VehicleRecord): string[] {
  return Object.values(program.captures.getState().held)
    .filter(({ captureId, choice }) => {
      const capture = record.captures[captureId];
      return capture !== undefined && !sameValue(capture.columnChoice, choice);
    })
    .map(({ captureId }) => captureId);
}

/** Until the capture is read as its record says: the record may go on changing meanwhile. */
async function reread(program: Program, captureId: string): Promise<void> {
  const stale = () => {
    const record = recordOf(program.record.getState());
    return record !== null && otherColumns(program, record).includes(captureId);
  };
  while (stale()) await reopenCapture(program, captureId);
}
