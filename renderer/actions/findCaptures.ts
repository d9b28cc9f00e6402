// A record knows its captures by name and hash, never by place. Here their files are found again.

import type { Picked } from '../../core/bridge/shellMessages.ts';
import type { CaptureRef, VehicleRecord } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { fitView } from './fitView.ts';
import { holdCapture, releaseCapture, showCapture } from './holdCapture.ts';
import { readPicked } from './readPicked.ts';

/** Opens the captures of a vehicle again, the one that is shown first. `already` is the hash of one that is open. */
export async function findCaptures(program: Program, record: VehicleRecord, already: string | null): Promise<void> {
  const shown = program.workspace.getState().captureId;
  const wanted = Object.values(record.captures)
    .filter((capture) => capture.sha256 !== already)
    .sort((a, b) => Number(b.id === shown) - Number(a.id === shown) || a.addedAt.localeCompare(b.addedAt));
  for (const capture of wanted) {
    if (recordOf(program.record.getState())?.id !== record.id) return;
    const picked = await program.shell.findCapture({ sha256: capture.sha256, name: capture.name });
    if (picked === null) miss(program, capture, 'notFound');
    else await openFound(program, capture, picked);
  }
}

/** Asks the person where a moved capture is now, and takes it where it is the same file. */
export async function locateCapture(program: Program, captureId: string): Promise<void> {
  const capture = recordOf(program.record.getState())?.captures[captureId];
  if (capture === undefined) return;
  const picked = await program.shell.locateCapture({ sha256: capture.sha256, name: capture.name });
  if (picked !== null) await openFound(program, capture, picked);
}

/** Reads again all captures that the core held, after its process ended. */
export async function reopenCaptures(program: Program): Promise<void> {
  for (const { captureId } of Object.values(program.captures.getState().held)) await reopenCapture(program, captureId);
}

/** Reads a held capture again with the choice that its record has now. It is missed where its file is no longer there. */
export async function reopenCapture(program: Program, captureId: string): Promise<void> {
  const held = program.captures.getState().held[captureId];
  const capture = recordOf(program.record.getState())?.captures[captureId];
  if (held === undefined || capture === undefined) return;
  const { name, bytes, sample } = capture;
  await openFound(program, capture, { token: held.token, name, bytes, sample });
}

async function openFound(program: Program, capture: CaptureRef, picked: Picked): Promise<void> {
  const vehicle = recordOf(program.record.getState())?.id;
  const outcome = await readPicked(program, picked, { choice: capture.columnChoice });
  const now = recordOf(program.record.getState());
  if (now?.id !== vehicle || now?.captures[capture.id] === undefined) {
    if (outcome.ok) void program.core.ask('close', { key: outcome.value.summary.key });
    return;
  }
  if (!outcome.ok) {
    if (outcome.problem.id !== 'cancelled') program.notices.getState().tell('locate', outcome.problem);
    miss(program, capture, 'unread');
    return;
  }
  const { summary } = outcome.value;
  if (summary.sha256 !== capture.sha256) {
    void program.core.ask('close', { key: summary.key });
    miss(program, capture, 'changed');
    program.notices.getState().tell('locate', notTheSame(capture, picked.name));
    return;
  }
  await program.shell.rememberCapture({ token: picked.token, sha256: summary.sha256 });
  const before = program.captures.getState().held[capture.id]?.summary.durationS ?? summary.durationS;
  const held = holdCapture(program, capture.id, outcome.value);
  fitView(program, capture.id, before);
  const { captureId } = program.workspace.getState();
  if (captureId === null || captureId === capture.id) showCapture(program, capture.id, summary);
  await held;
}

function miss(program: Program, capture: CaptureRef, why: 'notFound' | 'changed' | 'unread'): void {
  releaseCapture(program, capture.id);
  program.captures.getState().miss({ captureId: capture.id, why });
}

function notTheSame(capture: CaptureRef, found: string) {
  return {
    id: 'otherFile',
    what: `${found} is not the file that was recorded as ${capture.name}: their hashes differ.`,
    where: capture.name,
    doNext: 'Choose the original file, or open this one as a capture of its own.',
  };
}
