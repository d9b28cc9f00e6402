import { useMemo } from 'react';
import { useStore } from 'zustand';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { offeredInstead } from '../state/selectors/offeredInstead.ts';

/** The sentence that points to the steady stretches on offer, or null. */
export function useOfferedInstead(): string | null {
  const program = useProgram();
  const score = useStore(program.score, (state) => state.score);
  const held = useStore(program.captures, (captures) => captures.held);
  const record = useStore(program.record, recordOf);
  return useMemo(() => offeredInstead(score, held, record), [score, held, record]);
}
