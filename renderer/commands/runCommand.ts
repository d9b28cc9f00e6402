import type { Program } from '../program/program.ts';
import { DEEDS } from './index.ts';

/** Runs a command by its id. One that cannot run now says why in the status line. */
export function runCommand(program: Program, id: string): void {
  const command = DEEDS.get(id);
  if (command === undefined) return;
  const { reason } = command.state(program);
  if (reason !== null) program.notices.getState().say(reason);
  else void command.run(program);
}
