// The questions that may take longer than a frame, answered apart from those that must not wait: where there are threads,
// in a thread of their own, so that a score never holds up a cursor or a view. They go by the captures' keys and know
// nothing of files, drawing or the window.

import type { CoreQuestionName, CoreQuestions } from '../bridge/coreMessages.ts';
import type { Capture } from '../capture/capture.ts';
import type { Outcome } from '../reading/problem.ts';
import type { SlowCore } from './coreFunctions.ts';
import { failed } from './serviceProblems.ts';
import { SLOW_ANSWERS } from './slow/index.ts';

export type SlowQuestionName = keyof typeof SLOW_ANSWERS;

/** Whether a question goes to SlowAnswers. */
export function isSlow(name: CoreQuestionName): name is SlowQuestionName {
  return Object.hasOwn(SLOW_ANSWERS, name);
}

/** Whoever answers slow questions, in this thread or in another. */
export interface SlowAnswers {
  /** Tells of a capture before anything is asked about it. */
  hold(key: string, capture: Capture): void;
  /** After this nothing of the capture is reachable from there. */
  release(key: string): void;
  /** `ask` has passed its schema. Never rejects. */
  answer<Name extends SlowQuestionName>(name: Name, ask: CoreQuestions[Name]['ask']): Promise<Outcome<unknown>>;
}

/** Answers slow questions in this thread. `tellFault` is told of faults in the program itself. */
export function slowAnswersHere(core: SlowCore, tellFault: (fault: unknown) => void): SlowAnswers {
  const held = new Map<string, Capture>();
  const tools = { core, find: (key: string) => held.get(key) ?? null };
  return {
    hold: (key, capture) => void held.set(key, capture),
    release: (key) => void held.delete(key),
    async answer(name, ask) {
      try {
        return SLOW_ANSWERS[name](ask, tools);
      } catch (fault) {
        tellFault(fault);
        return failed(name);
      }
    },
  };
}
