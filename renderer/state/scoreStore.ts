import { createStore, type StoreApi } from 'zustand/vanilla';
import type { WindowScore } from '../../core/findings/finding.ts';
import type { VehicleScore } from '../../core/findings/vehicleScore.ts';
import type { Problem } from '../../core/reading/problem.ts';

export interface ScoreState {
  /** What the core said last; may be about the windows of a moment ago while `pending`. */
  readonly score: VehicleScore | null;
  readonly pending: boolean;
  readonly problem: Problem | null;
  /** The offer that is being looked at, with its score once it is there. */
  readonly offer: { readonly id: string; readonly score: WindowScore | null } | null;
}

export type ScoreStore = StoreApi<ScoreState>;

export const NO_SCORE: ScoreState = { score: null, pending: false, problem: null, offer: null };

export function createScoreStore(): ScoreStore {
  return createStore<ScoreState>()(() => NO_SCORE);
}

/** The score of one window of the record, or null while there is none. */
export function windowScoreOf(state: ScoreState, windowId: string | null): WindowScore | null {
  return state.score?.windows.find((kept) => kept.windowId === windowId)?.score ?? null;
}
