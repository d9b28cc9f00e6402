import { setArchived } from '../../core/record/edits/vehicle.ts';
import { newVehicle } from '../../core/record/newVehicle.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { leaveVehicle, openRecord, openVehicle } from './openVehicle.ts';
import { refreshShelf } from './refreshShelf.ts';

/** Begins a vehicle and asks for its name. */
export async function beginVehicle(program: Program): Promise<void> {
  const vehicle = newVehicle({ id: program.newId(), name: 'New vehicle', createdAt: program.clock.instant() });
  if (!(await openRecord(program, vehicle))) return;
  program.dialogs.getState().show({ kind: 'vehicleDetails', part: 'name' });
  await program.saver.flush();
  await refreshShelf(program);
}

/** Opens a vehicle from the list; one that is open already stays as it is. One that cannot be opened says why. */
export async function chooseVehicle(program: Program, id: string): Promise<void> {
  program.dialogs.getState().close();
  const chosen = program.shelf.getState().vehicles.find((vehicle) => vehicle.id === id);
  if (chosen?.damaged !== undefined) {
    const where = `${chosen.name}, ${chosen.damaged.where}`;
    program.notices.getState().tell('vehicle', { ...chosen.damaged, where }); // what is open stays open: there is nothing to open in its place
    return;
  }
  if (recordOf(program.record.getState())?.id === id) return;
  await openVehicle(program, id);
  await refreshShelf(program);
}

/** Puts the open vehicle away, or takes it back. Nothing of it is lost, and undo takes it back too. */
export async function archiveVehicle(program: Program): Promise<void> {
  const vehicle = recordOf(program.record.getState());
  if (vehicle === null) return;
  const archived = !vehicle.archived;
  program.record.getState().edit(setArchived(archived));
  await program.saver.flush();
  await refreshShelf(program);
  const name = vehicle.identity.name;
  program.notices
    .getState()
    .say(archived ? `${name} was put into the archive; the list of vehicles can show it.` : `${name} was taken back.`);
}

/** Removes the open vehicle for good and goes to the start page. Where it cannot be removed, that is told there. */
export async function deleteVehicle(program: Program): Promise<void> {
  const vehicle = recordOf(program.record.getState());
  if (vehicle === null || !(await leaveVehicle(program))) return;
  const { problem } = await program.shell.deleteVehicle({ id: vehicle.id });
  if (problem === null) program.notices.getState().say(`${vehicle.identity.name} was deleted.`);
  else program.notices.getState().tell('vehicle', problem);
  await refreshShelf(program);
}

/** Puts everything away and goes to the start page, which lists what was just saved from its first moment on. */
export async function goToStart(program: Program): Promise<void> {
  await leaveVehicle(program, () => refreshShelf(program));
}
