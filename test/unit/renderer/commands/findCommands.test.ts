import { expect, it } from 'vitest';
import { COMMANDS } from '../../../../core/bridge/commandList.ts';
import { findCommands } from '../../../../renderer/commands/findCommands.ts';

// Words a technician would type, and the command that must be among the first three.
it.each([
  ['open', 'file.open'],
  ['csv', 'file.open'],
  ['demo', 'file.openSample'],
  ['report', 'file.exportSheet'],
  ['pdf', 'file.exportSheet'],
  ['print', 'file.print'],
  ['png', 'file.exportPicture'],
  ['notes', 'file.exportNotes'],
  ['settings', 'file.settings'],
  ['dark', 'file.settings'],
  ['undo', 'edit.undo'],
  ['delete', 'edit.delete'],
  ['clipboard', 'edit.copyValues'],
  ['zoom', 'view.in'],
  ['whole', 'view.whole'],
  ['back', 'view.back'],
  ['paper', 'view.margins'],
  ['overlay', 'view.overlay'],
  ['channel', 'view.channels'],
  ['0.45', 'view.guides'],
  ['ghost', 'view.ghosts'],
  ['dtc', 'vehicle.details'],
  ['vin', 'vehicle.details'],
  ['archive', 'vehicle.archive'],
  ['delete vehicle', 'vehicle.delete'],
  ['second opinion', 'file.exportBundle'],
  ['infrared', 'vehicle.addReading'],
  ['inlet', 'vehicle.addReading'],
  ['remark', 'window.note'],
  ['suggest', 'window.accept'],
  ['before after', 'window.compare'],
  ['shortcuts', 'help.keys'],
  ['glossary', 'help.measures'],
  ['safety', 'help.cautions'],
])('"%s" finds %s among the first three', (typed, id) => {
  expect(
    findCommands(typed)
      .slice(0, 3)
      .map((command) => command.id),
  ).toContain(id);
});

it('shows all commands before anything is typed', () => {
  expect(findCommands('  ')).toEqual(COMMANDS);
});

it('finds nothing for a word that nobody uses', () => {
  expect(findCommands('xyzzy')).toEqual([]);
});
