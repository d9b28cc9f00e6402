// What the core's process and the thread of its slow questions say to each other. Both are of this program, and the
// questions have passed their schemas before they come here.

import type { CoreQuestions } from '../../core/bridge/coreMessages.ts';
import type { Capture } from '../../core/capture/capture.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import type { SlowQuestionName } from '../../core/service/slowAnswers.ts';

export type ToSlowThread =
  | { readonly type: 'hold'; readonly key: string; readonly capture: Capture }
  | { readonly type: 'release'; readonly key: string }
  | {
      [Name in SlowQuestionName]: {
        readonly type: 'ask';
        readonly id: number;
        readonly name: Name;
        readonly ask: CoreQuestions[Name]['ask'];
      };
    }[SlowQuestionName];

export interface FromSlowThread {
  readonly id: number;
  readonly outcome: Outcome<unknown>;
}
