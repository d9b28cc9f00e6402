// The service that holds open captures and answers the questions of one window. It knows neither the process nor the
// worker it runs in: messages come in through `hear` and go out through `post`.

import { ASK_SCHEMAS, isQuestionName, toCoreSchema } from '../bridge/askSchemas.ts';
import type { CoreQuestionName, FromCore } from '../bridge/coreMessages.ts';
import type { Outcome } from '../reading/problem.ts';
import type { ReadProgress } from '../reading/readCapture.ts';
import type { AnswerTools } from './answers/answer.ts';
import { ANSWERS } from './answers/index.ts';
import type { CoreFunctions } from './coreFunctions.ts';
import type { CoreHost } from './coreHost.ts';
import { HeldCaptures } from './heldCaptures.ts';
import { badQuestion, cancelled, failed } from './serviceProblems.ts';

/** Questions that may take longer than a frame. They take turns, so that cursor and views never wait for more than one. */
const SLOW: ReadonlySet<CoreQuestionName> = new Set([
  'suggest',
  'scoreWindow',
  'scoreVehicle',
  'modelTraces',
  'compare',
  'describe',
]);

/**
 * Whoever has just looked at something will look at more: after a quick question, and after they were asked themselves,
 * slow ones wait this long for the next quick one, so that panes that are being drawn are complete before scores are
 * worked out.
 */
const EYES_FIRST_MS = 40;
/** Whoever goes on looking is scored all the same after this long. */
const LONGEST_WAIT_MS = 1000;

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
  readonly core: CoreFunctions;
  post(message: FromCore): void;
}

/**
 * Starts the service of one window. Bytes and clock come from `host`, the answers' functions from `core`, and everything
 * it says goes through `post`. Give it what arrives by `hear`; call `end` when the window is gone.
 */
export function startCoreService({ host, core, post }: CoreServiceParts): CoreService {
  const held = new HeldCaptures(core);
  /** Questions under way, and whether each was cancelled. */
  const asked = new Map<number, { cancelled: boolean }>();
  let turn: Promise<unknown> = Promise.resolve();
  let lookedMs = Number.NEGATIVE_INFINITY;

  /** Waits for the slow questions before this one, and lets in what has arrived meanwhile. */
  const inTurn = (work: () => Promise<void>): Promise<void> => {
    const askedMs = host.nowMs();
    const mine = turn.then(() => eyesFirst(askedMs)).then(work);
    turn = mine;
    return mine;
  };

  const eyesFirst = async (askedMs: number): Promise<void> => {
    await host.pause();
    while (host.nowMs() - askedMs < LONGEST_WAIT_MS) {
      const stillMs = host.nowMs() - Math.max(lookedMs, askedMs);
      if (stillMs >= EYES_FIRST_MS) return;
      await host.pause(EYES_FIRST_MS - stillMs);
    }
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
      const outcome = question.cancelled ? cancelled('the capture') : await outcomeOf(name, ask, tools);
      asked.delete(id);
      if (question.cancelled) return; // refused when the cancel came
      post(
        outcome.ok ? { type: 'reply', id, reply: outcome.value } : { type: 'refused', id, problem: outcome.problem },
      );
    };
    if (SLOW.has(name)) return inTurn(work);
    await work();
    lookedMs = host.nowMs();
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

async function outcomeOf(name: CoreQuestionName, ask: unknown, tools: AnswerTools): Promise<Outcome<unknown>> {
  try {
    return await dispatch(name, ask, tools);
  } catch (fault) {
    tools.host.tellFault(fault);
    return failed(name);
  }
}

function dispatch<Name extends CoreQuestionName>(name: Name, ask: unknown, tools: AnswerTools) {
  const checked = ASK_SCHEMAS[name].safeParse(ask);
  return checked.success ? ANSWERS[name](checked.data, tools) : badQuestion(name);
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
