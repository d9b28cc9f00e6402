// What every command of core/bridge/commandList.ts does. Its id, words and key stand there.

import type { Command } from './command.ts';
import { EDIT_COMMANDS } from './editCommands.ts';
import { FILE_COMMANDS } from './fileCommands.ts';
import { HELP_COMMANDS } from './helpCommands.ts';
import { VEHICLE_COMMANDS } from './vehicleCommands.ts';
import { VIEW_COMMANDS } from './viewCommands.ts';
import { WINDOW_COMMANDS } from './windowCommands.ts';

export const DEEDS: ReadonlyMap<string, Command> = byId([
  ...FILE_COMMANDS,
  ...EDIT_COMMANDS,
  ...VIEW_COMMANDS,
  ...VEHICLE_COMMANDS,
  ...WINDOW_COMMANDS,
  ...HELP_COMMANDS,
]);

function byId(commands: readonly Command[]): ReadonlyMap<string, Command> {
  const map = new Map<string, Command>();
  for (const command of commands) {
    if (map.has(command.id)) throw new Error(`Two commands are called ${command.id}.`);
    map.set(command.id, command);
  }
  return map;
}
