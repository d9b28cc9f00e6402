import { COMMANDS } from '../../core/bridge/commandList.ts';
import type { Program } from '../program/program.ts';
import { decidingStores } from './command.ts';
import { DEEDS } from './index.ts';

/** Tells the menu bar what can be chosen, once per round of changes and only what differs. */
export function keepCommandStates(program: Program): () => void {
  const told = new Map<string, string>();
  let waiting = false;

  const tell = (): void => {
    waiting = false;
    const changed = COMMANDS.flatMap(({ id }) => {
      const state = DEEDS.get(id)?.state(program);
      if (state === undefined) return [];
      const { enabled, checked, words } = state;
      const key = `${enabled} ${checked} ${words}`;
      if (told.get(id) === key) return [];
      told.set(id, key);
      return [{ id, enabled, checked, words }];
    });
    if (changed.length > 0) void program.shell.setCommandStates(changed);
  };
  const soon = (): void => {
    if (waiting) return;
    waiting = true;
    queueMicrotask(tell);
  };

  tell();
  const stops = decidingStores(program).map((store) => store.subscribe(soon));
  return () => stops.forEach((stop) => void stop());
}
