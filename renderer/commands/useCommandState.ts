import { useCallback, useRef, useSyncExternalStore } from 'react';
import { useProgram } from '../program/programContext.ts';
import { type CommandState, decidingStores } from './command.ts';
import { DEEDS } from './index.ts';

/** Whether a command can run now; follows everything it may hang on. */
export function useCommandState(id: string): CommandState {
  const program = useProgram();
  const last = useRef<{ key: string; state: CommandState } | null>(null);
  const subscribe = useCallback(
    (hear: () => void) => {
      const stops = decidingStores(program).map((store) => store.subscribe(hear));
      return () => stops.forEach((stop) => void stop());
    },
    [program],
  );
  return useSyncExternalStore(subscribe, () => {
    const state = DEEDS.get(id)?.state(program);
    if (state === undefined) throw new Error(`There is no command ${id}.`);
    const key = JSON.stringify(state);
    if (last.current?.key !== key) last.current = { key, state };
    return last.current.state;
  });
}
