import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Finding, WindowScore } from '../../core/findings/finding.ts';
import type { VehicleScore } from '../../core/findings/vehicleScore.ts';
import type { ModelTrace } from '../../core/model/modelTrace.ts';
import type { Problem } from '../../core/reading/problem.ts';
import type { KeptFinding } from '../../core/record/schema.ts';

export interface ScoreState {
  /** What the core said last; may be about the windows of a moment ago while `pending`. */
  readonly score: VehicleScore | null;
  readonly pending: boolean;
  readonly problem: Problem | null;
  /** Findings by their id that another version of the core made, as they stood when the vehicle was opened. */
  readonly byOtherCore: Readonly<Record<string, KeptFinding>>;
  /** Traces of the model for the window or offer that is looked at, while they are switched on. */
  readonly model: readonly ModelTrace[];
  /** The offer that is being looked at, with a score for each bank once they are there. */
  readonly offer: { readonly id: string; readonly scores: readonly WindowScore[] | null } | null;
}

export type ScoreStore = StoreApi<ScoreState>;

export const NO_SCORE: ScoreState = {
  score: null,
  pending: false,
  problem: null,
  offer: null,
  model: [],
  byOtherCore: {},
};

export function createScoreStore(): ScoreStore {
  return createStore<ScoreState>()(() => NO_SCORE);
}

const NONE: readonly WindowScore[] = [];

/** The scores of one window of the record, one for each bank it speaks of; empty while there are none. */
export function windowScoresOf(score: VehicleScore | null, windowId: string | null): readonly WindowScore[] {
  const found = score?.windows.filter((kept) => kept.windowId === windowId).map((kept) => kept.score);
  return found === undefined || found.length === 0 ? NONE : found;
}

/** From what is said of several banks the one that matters most, for a sign that has room for one. */
export function gravest(scores: readonly WindowScore[]): Finding | null {
  return GRAVITY.find((finding) => scores.some((score) => score.finding === finding)) ?? null;
}

const GRAVITY: readonly Finding[] = ['notStoring', 'weak', 'cannotTell', 'storing'];
