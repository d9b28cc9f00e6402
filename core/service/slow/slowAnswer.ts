import type { CoreQuestions } from '../../bridge/coreMessages.ts';
import type { Capture } from '../../capture/capture.ts';
import type { Outcome } from '../../reading/problem.ts';
import type { SlowCore } from '../coreFunctions.ts';

/** What a slow answer may use. */
export interface SlowTools {
  /** The capture held under a key, or null. */
  find(key: string): Capture | null;
  readonly core: SlowCore;
}

/** How one slow question is answered: one file in this folder, one line in its index. */
export type SlowAnswer<Name extends keyof CoreQuestions> = (
  ask: CoreQuestions[Name]['ask'],
  tools: SlowTools,
) => Outcome<CoreQuestions[Name]['reply']>;
