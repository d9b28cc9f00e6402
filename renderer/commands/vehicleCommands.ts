import { lookNow } from '../actions/blindReading.ts';
import { repairsIn } from '../actions/changeRepair.ts';
import { archiveVehicle, beginVehicle } from '../actions/vehicles.ts';
import type { Program } from '../program/program.ts';
import { readsBlind, recordOf } from '../state/recordStore.ts';
import { always, type Command, stateFor, unless } from './command.ts';
import { firstReason, whileBlind, withoutCapture, withoutEditing, withoutVehicle } from './reasons.ts';

export const VEHICLE_COMMANDS: readonly Command[] = [
  always('vehicle.new', (program) => beginVehicle(program)),
  always('vehicle.list', ({ dialogs }) => dialogs.getState().show({ kind: 'vehicles' })),
  unless('vehicle.details', withoutVehicle, ({ dialogs }) => dialogs.getState().show({ kind: 'vehicleDetails' })),
  unless('vehicle.rename', withoutEditing, ({ dialogs }) =>
    dialogs.getState().show({ kind: 'vehicleDetails', part: 'name' }),
  ),
  {
    id: 'vehicle.archive',
    state: (program) => {
      const archived = recordOf(program.record.getState())?.archived === true;
      return { ...stateFor(withoutEditing(program)), words: archived ? 'Take vehicle out of the archive' : null };
    },
    run: (program) => archiveVehicle(program),
  },
  unless('vehicle.delete', withoutVehicle, ({ dialogs }) => dialogs.getState().show({ kind: 'deleteVehicle' })),
  unless('vehicle.addReading', withoutEditing, ({ dialogs }) =>
    dialogs.getState().show({ kind: 'reading', readingId: null }),
  ),
  unless('vehicle.addNote', withoutEditing, ({ dialogs }) =>
    dialogs.getState().show({ kind: 'note', noteId: null, captureId: null, startS: null, endS: null }),
  ),
  unless('vehicle.sign', withoutEditing, ({ dialogs }) => dialogs.getState().show({ kind: 'sign', answers: null })),
  unless('vehicle.opinions', withoutOpinions, ({ dialogs }) =>
    dialogs.getState().show({ kind: 'opinions', opinionId: null }),
  ),
  unless('vehicle.look', withNothingHidden, lookNow),
  unless(
    'vehicle.columns',
    (program) => firstReason(withoutCapture(program), withoutEditing(program)),
    ({ dialogs, workspace }) => {
      const { captureId } = workspace.getState();
      if (captureId !== null) dialogs.getState().show({ kind: 'columns', captureId });
    },
  ),
  unless('vehicle.repairs', withoutRepairs, ({ workspace, notices }) => {
    workspace.getState().set({ report: 'capture', rightMargin: true });
    notices.getState().say('What was repaired is listed in the margin, each with a button that undoes it.');
  }),
];

function withoutOpinions(program: Program): string | null {
  const signed = Object.keys(recordOf(program.record.getState())?.opinions ?? {}).length;
  const none = signed === 0 ? 'No opinion is signed on this vehicle yet.' : null;
  return firstReason(withoutVehicle(program), whileBlind(program), none);
}

function withNothingHidden(program: Program): string | null {
  const nothing = readsBlind(program.record.getState()) ? null : 'Nothing is hidden in this vehicle.';
  return firstReason(withoutEditing(program), nothing);
}

function withoutRepairs(program: Program): string | null {
  const none = repairsIn(program) === 0 ? 'Nothing had to be repaired when this capture was read.' : null;
  return firstReason(withoutCapture(program), none);
}
