import type { StoreApi } from 'zustand/vanilla';
import { type RecordStore, readsBlind } from './recordStore.ts';
import { NO_SCORE, type ScoreState, type ScoreStore } from './scoreStore.ts';

/** What the core said, as it may be shown: to be read and followed, not to be written. */
export type ShownScores = Omit<StoreApi<ScoreState>, 'setState'>;

const HIDDEN = NO_SCORE;
const HIDDEN_WHILE_PENDING: ScoreState = { ...NO_SCORE, pending: true };

/**
 * The scores that the screens see. The program counts as a reader: while the vehicle is read blind nothing that it said is in
 * here, only whether it is still at work. Worked out at every reading, so that no moment shows more.
 */
export function shownScores(whole: ScoreStore, record: RecordStore): ShownScores {
  const see = (): ScoreState => {
    const state = whole.getState();
    if (!readsBlind(record.getState())) return state;
    return state.pending ? HIDDEN_WHILE_PENDING : HIDDEN;
  };
  return {
    getState: see,
    getInitialState: whole.getInitialState,
    subscribe: (hear) => {
      let before = see();
      const look = (): void => {
        const now = see();
        if (now === before) return;
        const last = before;
        before = now;
        hear(now, last);
      };
      const stops = [whole.subscribe(look), record.subscribe(look)];
      return () => stops.forEach((stop) => void stop());
    },
  };
}
