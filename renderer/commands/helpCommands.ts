import { always, type Command } from './command.ts';

export const HELP_COMMANDS: readonly Command[] = [
  always('help.keys', ({ dialogs }) => dialogs.getState().show({ kind: 'keys' })),
  always('help.measures', ({ dialogs }) => dialogs.getState().show({ kind: 'measures' })),
  always('help.cautions', ({ dialogs }) => dialogs.getState().show({ kind: 'cautions' })),
  always('help.about', ({ dialogs }) => dialogs.getState().show({ kind: 'about' })),
];
