// Opening and leaving vehicles. What was open is saved before it is left; where that fails it stays open.

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
  if (loaded.notice !== null) program.notices.getState().tell('vehicle', loaded.notice);
  program.saver.isOnDisk(loaded.record);
  enter(program, loaded.record, loaded.readOnly, readViewState(loaded.view));
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

/** Opens a record that was not kept before; it is saved at once. */
export async function openRecord(program: Program, record: VehicleRecord): Promise<boolean> {
  if (!(await leaveVehicle(program))) return false;
  enter(program, record, false, FRESH_VIEW);
  return true;
}

/** Saves what is open and puts it away. False where it could not be saved; then it stays. */
export async function leaveVehicle(program: Program): Promise<boolean> {
  const { record, captures, core } = program;
  for (const job of captures.getState().jobs) job.cancel();
  if (recordOf(record.getState()) === null) return true;
  if (!(await program.saver.flush())) return false;
  await saveView(program);
  for (const held of Object.values(captures.getState().held)) void core.ask('close', { key: held.summary.key });
  captures.getState().releaseAll();
  for (const place of ['vehicle', 'score', 'locate', 'export'] as const) program.notices.getState().clear(place);
  record.getState().closeVehicle();
  program.workspace.getState().restore(FRESH_VIEW);
  program.score.setState(NO_SCORE);
  return true;
}

function enter(program: Program, record: VehicleRecord, readOnly: boolean, view: ViewState): void {
  program.score.setState(NO_SCORE);
  program.workspace.getState().restore(view);
  program.record.getState().open(record, readOnly);
}
