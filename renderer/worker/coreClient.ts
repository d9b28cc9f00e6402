import type { CoreQuestionName, CoreQuestions, FromCore, ToCore } from '../../core/bridge/coreMessages.ts';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { ReadProgress } from '../../core/reading/readCapture.ts';

/** The part of a port the client uses. */
export type CorePort = Pick<MessagePort, 'postMessage' | 'onmessage' | 'close'>;

export interface AskOptions {
  onProgress?(progress: ReadProgress): void;
  readonly signal?: AbortSignal;
}

export interface CoreClient {
  /** Asks one question. Refusals are values; nothing is rejected. Questions asked without a port wait for one. */
  ask<Name extends CoreQuestionName>(
    name: Name,
    ask: CoreQuestions[Name]['ask'],
    options?: AskOptions,
  ): Promise<Outcome<CoreQuestions[Name]['reply']>>;
  /** Takes a port: the first one, or the one that follows a loss. */
  connect(port: CorePort): void;
  /** The other side is gone: every open question is refused with the problem "coreLost". */
  lose(): void;
}

/** The outcome of a question that its asker cancelled. Not an error: it is what was asked for. */
export const CANCELLED: Problem = { id: 'cancelled', what: 'Cancelled.', where: '', doNext: '' };

export const CORE_LOST: Problem = {
  id: 'coreLost',
  what: 'The part of the program that reads captures stopped.',
  where: 'Tailtrace',
  doNext: 'It is started again by itself; your work is kept.',
};

interface OpenQuestion {
  readonly message: ToCore;
  answer(outcome: Outcome<unknown>): void;
  onProgress?(progress: ReadProgress): void;
}

export function createCoreClient(): CoreClient {
  const open = new Map<number, OpenQuestion>();
  let port: CorePort | null = null;
  let nextId = 1;

  const hear = (message: FromCore): void => {
    const question = open.get(message.id);
    if (question === undefined) return; // cancelled here before the answer came
    if (message.type === 'progress') {
      question.onProgress?.(message.progress);
      return;
    }
    open.delete(message.id);
    if (message.type === 'reply') question.answer({ ok: true, value: message.reply });
    else question.answer({ ok: false, problem: message.problem });
  };

  const cancel = (id: number): void => {
    const question = open.get(id);
    if (question === undefined) return;
    open.delete(id);
    port?.postMessage({ type: 'cancel', id });
    question.answer({ ok: false, problem: CANCELLED });
  };

  return {
    ask(name, ask, options = {}) {
      const id = nextId++;
      return new Promise((resolve) => {
        if (options.signal?.aborted === true) {
          resolve({ ok: false, problem: CANCELLED });
          return;
        }
        // The one place where a reply gets its type: the list of questions is shared with the side that answers.
        const message = { type: 'ask', id, name, ask } as ToCore;
        open.set(id, {
          message,
          answer: (outcome) => resolve(outcome as Outcome<CoreQuestions[typeof name]['reply']>),
          ...(options.onProgress === undefined ? {} : { onProgress: options.onProgress }),
        });
        options.signal?.addEventListener('abort', () => cancel(id), { once: true });
        port?.postMessage(message);
      });
    },
    connect(newPort) {
      port = newPort;
      port.onmessage = (event) => hear(event.data);
      for (const { message } of open.values()) port.postMessage(message);
    },
    lose() {
      if (port !== null) {
        port.onmessage = null;
        port.close();
        port = null;
      }
      const lost = [...open.values()];
      open.clear();
      for (const question of lost) question.answer({ ok: false, problem: CORE_LOST });
    },
  };
}
