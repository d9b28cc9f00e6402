import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import type { Comparison } from '../../core/compare/comparison.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import { useProgram } from '../program/programContext.ts';
import { recordOf } from '../state/recordStore.ts';
import { captureWindow } from '../state/selectors/captureWindow.ts';

/** What the core says of the two windows, again whenever one of them is moved; null until it has answered. */
export function useComparison(firstId: string, secondId: string): Outcome<Comparison> | null {
  const { core, record: store, captures } = useProgram();
  const first = useStore(store, (state) => recordOf(state)?.windows[firstId]);
  const second = useStore(store, (state) => recordOf(state)?.windows[secondId]);
  const firstKey = useStore(captures, (state) => state.held[first?.captureId ?? '']?.summary.key);
  const secondKey = useStore(captures, (state) => state.held[second?.captureId ?? '']?.summary.key);
  const [answer, setAnswer] = useState<Outcome<Comparison> | null>(null);
  useEffect(() => {
    if (first === undefined || second === undefined || firstKey === undefined || secondKey === undefined) return;
    let latest = true;
    void core
      .ask('compare', {
        first: { key: firstKey, window: captureWindow(first) },
        second: { key: secondKey, window: captureWindow(second) },
      })
      .then((outcome) => latest && setAnswer(outcome));
    return () => {
      latest = false;
    };
  }, [core, first, second, firstKey, secondKey]);
  return answer;
}
