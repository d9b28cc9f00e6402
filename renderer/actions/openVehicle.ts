// Opening and leaving vehicles. What was open is saved before it is left; where that fails it stays open.

import { isReadBlind } from '../../core/record/blindReading.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { NO_SCORE } from '../state/scoreStore.ts';
import { FRESH_VIEW, readViewState, type ViewState } from '../state/viewState.ts';
import { findCaptures } from './findCaptures.ts';
import { saveView } from './keepView.ts';
import type { ReadFile } from './readPicked.ts';

/**
 * Opens a kept vehicle with its view as it was left, and finds its captures again, except the one in `already`. False
 * where it cannot be opened; then what was open is put away, and the start page says why.
 */
export async function openVehicle(program: Program, id: string, already: ReadFile | null = null): Promise<boolean> {
  if (!(await leaveVehicle(program))) return false;
  const loaded = await program.shell.loadVehicle({ id });
  if (!loaded.ok) {
    program.shelf.setState({ damaged: { id, problem: loaded.problem, earlier: loaded.earlier } });
    return false;
  }
  program.shelf.setState({ damaged: null });
  program.saver.isOnDisk(loaded.record);
  enter(program, loaded.record, loaded.readOnly, readViewState(loaded.view));
  if (loaded.notice !== null) program.notices.getState().tell('vehicle', loaded.notice);
  await findCaptures(program, loaded.record, already?.summary.sha256 ?? null);
  return true;
}

/** Makes an earlier save of a vehicle the newest, and opens it. */
export async function openEarlierSave(program: Program, id: string, generation: string): Promise<boolean> {
  const restored = await program.shell.restoreVehicle({ id, generation });
  if (restored.ok) return openVehicle(program, id);
  program.shelf.setState({ damaged: { id, problem: restored.problem, earlier: restored.earlier } });
  return false;
}

/** Goes back to an earlier save of the open vehicle. What a reader has seen since stays seen. */
export async function goBackTo(program: Program, generation: string): Promise<void> {
  const { record } = program;
  const open = recordOf(record.getState());
  if (open === null || !(await leaveVehicle(program))) return;
  const lookedAt = open.blindReading?.lookedAt ?? null;
  if ((await openEarlierSave(program, open.id, generation)) && lookedAt !== null) record.getState().look(lookedAt);
}

/**
 * Opens a record that was not kept before; it is saved at once. `whenOpen` is done in the same moment, before any of it is
 * drawn.
 */
export async function openRecord(program: Program, record: VehicleRecord, whenOpen?: () => void): Promise<boolean> {
  if (!(await leaveVehicle(program))) return false;
  enter(program, record, false, FRESH_VIEW);
  whenOpen?.();
  return true;
}

/**
 * Saves what is open and puts it away. False where it could not be saved; then it stays. `whenSaved` is done while it is still
 * shown. Only what is read for this vehicle is called off: a file that is opened meanwhile comes after it.
 */
export async function leaveVehicle(program: Program, whenSaved?: () => Promise<void>): Promise<boolean> {
  const { record, captures } = program;
  // Without a moment in between: what is opened right after this is not for the vehicle any more.
  if (record.getState().leaving) await vehicleLeft(program);
  const vehicle = recordOf(record.getState());
  if (vehicle === null) return true;
  record.setState({ leaving: true });
  record.getState().endGesture(); // a drag whose end was never heard is not saved otherwise
  program.notices.getState().say(''); // what was done with it is not said of what comes next
  try {
    for (const job of captures.getState().jobs) if (job.vehicleId === vehicle.id) job.cancel();
    if (!(await program.saver.flush())) return false;
    await saveView(program);
    await whenSaved?.();
    if (!(await program.saver.flush())) return false; // what was edited meanwhile
    putAway(program);
    return true;
  } finally {
    record.setState({ leaving: false });
  }
}

/** Resolves when no vehicle is being put away any more. */
export async function vehicleLeft({ record }: Program): Promise<void> {
  while (record.getState().leaving) {
    await new Promise<void>((resolve) => {
      const stop = record.subscribe(() => {
        stop();
        resolve();
      });
    });
  }
}

function putAway(program: Program): void {
  const { record, captures, core } = program;
  for (const held of Object.values(captures.getState().held)) void core.ask('close', { key: held.summary.key });
  captures.getState().releaseAll();
  for (const place of ['vehicle', 'score', 'locate', 'export'] as const) program.notices.getState().clear(place);
  record.getState().closeVehicle();
  program.workspace.getState().restore(FRESH_VIEW);
  program.wholeScore.setState(NO_SCORE);
}

function enter(program: Program, record: VehicleRecord, readOnly: boolean, view: ViewState): void {
  program.wholeScore.setState(NO_SCORE);
  program.notices.getState().clear('vehicle'); // what the start page said of another one
  // What the program says of two windows, or draws over the traces, is not shown while the record is read blind.
  program.workspace.getState().restore(isReadBlind(record) ? { ...view, compare: null, ghosts: false } : view);
  program.record.getState().open(record, readOnly);
}
