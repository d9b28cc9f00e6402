import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Problem } from '../../core/reading/problem.ts';

/** Where on the page a problem is shown: beside what caused it. */
export type ProblemPlace = 'open' | 'vehicle' | 'save' | 'score' | 'export' | 'locate';

export interface ShownProblem {
  readonly key: number;
  readonly place: ProblemPlace;
  readonly problem: Problem;
}

export interface NoticeState {
  /** The status line: what was just done, in a sentence. Announced without taking the focus. */
  readonly words: string;
  readonly problems: readonly ShownProblem[];
  say(words: string): void;
  /** Shows a problem; the same one twice is shown once. */
  tell(place: ProblemPlace, problem: Problem): void;
  dismiss(key: number): void;
  /** Takes away what is no longer true at a place. */
  clear(place: ProblemPlace): void;
}

export type NoticeStore = StoreApi<NoticeState>;

export function createNoticeStore(): NoticeStore {
  let nextKey = 1;
  return createStore<NoticeState>()((set, get) => ({
    words: '',
    problems: [],
    say: (words) => set({ words }),
    tell: (place, problem) => {
      const others = get().problems.filter((shown) => !(shown.place === place && sameProblem(shown.problem, problem)));
      set({ problems: [...others, { key: nextKey++, place, problem }] });
    },
    dismiss: (key) => set({ problems: get().problems.filter((shown) => shown.key !== key) }),
    clear: (place) => {
      const left = get().problems.filter((shown) => shown.place !== place);
      if (left.length < get().problems.length) set({ problems: left });
    },
  }));
}

function sameProblem(one: Problem, other: Problem): boolean {
  return one.id === other.id && one.where === other.where && one.what === other.what;
}
