import type { Program } from '../program/program.ts';

/** Whether a command can run now, and why not. */
export interface CommandState {
  readonly enabled: boolean;
  /** Why it cannot run now and what to do first, a sentence; null where it can. */
  readonly reason: string | null;
  readonly checked: boolean;
  /** Replaces the command's words where they change: "Undo: move window". */
  readonly words: string | null;
}

/** What a command of core/bridge/commandList.ts does, and when. */
export interface Command {
  readonly id: string;
  state(program: Program): CommandState;
  run(program: Program): void | Promise<void>;
}

/** Every store that the state of some command hangs on. */
export function decidingStores({ record, workspace, captures, score, settings, shelf }: Program) {
  return [record, workspace, captures, score, settings, shelf];
}

const ALWAYS: CommandState = { enabled: true, reason: null, checked: false, words: null };

/** A command that can always run. */
export function always(id: string, run: Command['run']): Command {
  return { id, state: () => ALWAYS, run };
}

/** A command that can run while `reason` is null. */
export function unless(id: string, reason: (program: Program) => string | null, run: Command['run']): Command {
  return { id, state: (program) => stateFor(reason(program)), run };
}

/** A command with a tick. */
export function toggle(
  id: string,
  checked: (program: Program) => boolean,
  run: Command['run'],
  reason: (program: Program) => string | null = () => null,
): Command {
  return { id, state: (program) => ({ ...stateFor(reason(program)), checked: checked(program) }), run };
}

export function stateFor(reason: string | null): CommandState {
  return reason === null ? ALWAYS : { ...ALWAYS, enabled: false, reason };
}
