import type { CoreQuestionName, CoreQuestions } from '../../bridge/coreMessages.ts';
import type { Outcome } from '../../reading/problem.ts';
import type { ReadProgress } from '../../reading/readCapture.ts';
import type { QuickCore } from '../coreFunctions.ts';
import type { CoreHost } from '../coreHost.ts';
import type { HeldCaptures } from '../heldCaptures.ts';

/** What an answer may use. */
export interface AnswerTools {
  /** The question's own number. */
  readonly askId: number;
  readonly held: HeldCaptures;
  readonly core: QuickCore;
  readonly host: CoreHost;
  /** May be called as often as one likes: the service passes on a few a second. */
  onProgress(progress: ReadProgress): void;
  isCancelled(): boolean;
}

/** How one question is answered: one file in this folder, one line in its index. */
export type Answer<Name extends CoreQuestionName> = (
  ask: CoreQuestions[Name]['ask'],
  tools: AnswerTools,
) => Outcome<CoreQuestions[Name]['reply']> | Promise<Outcome<CoreQuestions[Name]['reply']>>;
