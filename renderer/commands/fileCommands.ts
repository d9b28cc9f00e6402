import { printSheet } from '../actions/exportSheet.ts';
import { pickCaptures } from '../actions/openCaptures.ts';
import { refreshShelf } from '../actions/refreshShelf.ts';
import { goToStart } from '../actions/vehicles.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { always, type Command, unless } from './command.ts';
import { firstReason, whileBlind, withoutCapture, withoutEditing, withoutScore, withoutVehicle } from './reasons.ts';

export const FILE_COMMANDS: readonly Command[] = [
  always('file.open', (program) => pickCaptures(program)),
  always('file.openSample', ({ dialogs }) => dialogs.getState().show({ kind: 'samples' })),
  unless('file.exportSheet', withoutSheet, ({ dialogs }) => dialogs.getState().show({ kind: 'sheet' })),
  unless('file.print', withoutSheet, (program) => printSheet(program)),
  unless(
    'file.exportBundle',
    (program) => firstReason(withoutEditing(program), whileBlind(program), withoutScore(program)),
    ({ dialogs }) => dialogs.getState().show({ kind: 'bundle' }),
  ),
  unless('file.exportPicture', withoutCapture, ({ dialogs }) => dialogs.getState().show({ kind: 'picture' })),
  unless(
    'file.exportNotes',
    (program) => {
      const notes = Object.keys(recordOf(program.record.getState())?.notes ?? {});
      return withoutVehicle(program) ?? (notes.length === 0 ? 'This vehicle has no notes yet.' : null);
    },
    ({ dialogs }) => dialogs.getState().show({ kind: 'notesTable' }),
  ),
  unless('file.save', withoutVehicle, async ({ saver, notices }) => {
    if (await saver.flush()) notices.getState().say('Everything is saved. It is saved by itself after every change.');
  }),
  unless(
    'file.clearRecent',
    ({ shelf }) => (shelf.getState().recent.length === 0 ? 'The list of recent captures is empty.' : null),
    async (program) => {
      await program.shell.clearRecent(null);
      await refreshShelf(program);
    },
  ),
  always('file.settings', ({ dialogs }) => dialogs.getState().show({ kind: 'settings' })),
  unless('file.closeCapture', withoutVehicle, (program) => goToStart(program)),
];

/** A sheet is what the program says of the vehicle. */
function withoutSheet(program: Program): string | null {
  return firstReason(withoutVehicle(program), whileBlind(program));
}
