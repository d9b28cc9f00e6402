// The service that holds open captures and answers the questions of one window. It knows neither the process nor the
// worker it runs in: messages come in through `hear` and go out through `post`.

import { ASK_SCHEMAS, isQuestionName, toCoreSchema } from '../bridge/askSchemas.ts';
import type { CoreQuestionName, FromCore } from '../bridge/coreMessages.ts';
import type { Outcome } from '../reading/problem.ts';
import type { ReadProgress } from '../reading/readCapture.ts';
import type { AnswerTools } from './answers/answer.ts';
import { ANSWERS, type QuickQuestionName } from './answers/index.ts';
import type { QuickCore } from './coreFunctions.ts';
import type { CoreHost } from './coreHost.ts';
import { HeldCaptures } from './heldCaptures.ts';
import { badQuestion, cancelled, failed } from './serviceProblems.ts';
import { isSlow, type SlowAnswers, type SlowQuestionName } from './slowAnswers.ts';

/** Progress is told about ten times a second. */
const PROGRESS_MS = 100;

export interface CoreService {
  /** Takes whatever the window sent. Never throws; what is no question is refused or, without an id, passed over. */
  hear(message: unknown): void;
  /** The window is gone: stops what is being read and lets all captures go. */
  end(): void;
}

export interface CoreServiceParts {
  readonly host: CoreHost;
  readonly core: QuickCore;
  readonly slow: SlowAnswers;
  post(message: FromCore): void;
}

/**
 * Starts the service of one window. Bytes and clock come from `host`, what opens and draws from `core`; what may take long
 * is asked of `slow`, and everything the service says goes through `post`. Give it what arrives by `hear`; call `end` when
 * the window is gone.
 */
export function startCoreService({ host, core, slow, post }: CoreServiceParts): CoreService {
  const held = new HeldCaptures(core, slow);
  /** Questions under way, and whether each was cancelled. */
  const asked = new Map<number, { cancelled: boolean }>();
  let turn: Promise<unknown> = Promise.resolve();

  /** Slow questions take turns; those that are cancelled while they wait are never begun. */
  const inTurn = (work: () => Promise<void>): Promise<void> => {
    const mine = turn.then(() => host.pause()).then(work);
    turn = mine;
    return mine;
  };

  const answer = async (id: number, name: CoreQuestionName, ask: unknown): Promise<void> => {
    const question = { cancelled: false };
    asked.set(id, question);
    const tools: AnswerTools = {
      askId: id,
      held,
      core,
      host,
      isCancelled: () => question.cancelled,
      onProgress: atTimes(host, (progress) => {
        if (!question.cancelled) post({ type: 'progress', id, progress });
      }),
    };
    const work = async (): Promise<void> => {
      const outcome = question.cancelled ? cancelled('the capture') : await outcomeOf(name, ask, tools, slow);
      asked.delete(id);
      if (question.cancelled) return; // refused when the cancel came
      post(
        outcome.ok ? { type: 'reply', id, reply: outcome.value } : { type: 'refused', id, problem: outcome.problem },
      );
    };
    return isSlow(name) ? inTurn(work) : work();
  };

  const cancel = (id: number): void => {
    held.releaseOpenedBy(id); // answered, but the answer and the cancel met on the way
    const question = asked.get(id);
    if (question === undefined || question.cancelled) return;
    question.cancelled = true;
    post({ type: 'refused', id, ...cancelled('the capture') });
  };

  return {
    hear(message) {
      const heard = toCoreSchema.safeParse(message);
      if (!heard.success) return;
      if (heard.data.type === 'cancel') cancel(heard.data.id);
      else if (isQuestionName(heard.data.name)) void answer(heard.data.id, heard.data.name, heard.data.ask);
      else post({ type: 'refused', id: heard.data.id, ...badQuestion(heard.data.name) });
    },
    end() {
      for (const question of asked.values()) question.cancelled = true;
      held.releaseAll();
    },
  };
}

async function outcomeOf(
  name: CoreQuestionName,
  ask: unknown,
  tools: AnswerTools,
  slow: SlowAnswers,
): Promise<Outcome<unknown>> {
  try {
    return await (isSlow(name) ? dispatchSlow(name, ask, slow) : dispatch(name, ask, tools));
  } catch (fault) {
    tools.host.tellFault(fault);
    return failed(name);
  }
}

function dispatch<Name extends QuickQuestionName>(name: Name, ask: unknown, tools: AnswerTools) {
  const checked = ASK_SCHEMAS[name].safeParse(ask);
  return checked.success ? ANSWERS[name](checked.data, tools) : badQuestion(name);
}

function dispatchSlow<Name extends SlowQuestionName>(name: Name, ask: unknown, slow: SlowAnswers) {
  const checked = ASK_SCHEMAS[name].safeParse(ask);
  return checked.success ? slow.answer(name, checked.data) : badQuestion(name);
}

/** Passes on the first report, and after that at most one every PROGRESS_MS. */
function atTimes(host: CoreHost, tell: (progress: ReadProgress) => void): (progress: ReadProgress) => void {
  let toldMs = Number.NEGATIVE_INFINITY;
  return (progress) => {
    const nowMs = host.nowMs();
    if (nowMs - toldMs < PROGRESS_MS) return;
    toldMs = nowMs;
    tell(progress);
  };
}
