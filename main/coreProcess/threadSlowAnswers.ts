import { Worker } from 'node:worker_threads';
import type { Outcome } from '../../core/reading/problem.ts';
import type { SlowAnswers } from '../../core/service/slowAnswers.ts';
import type { FromSlowThread, ToSlowThread } from './slowMessages.ts';

/**
 * Answers slow questions in a thread of its own. A capture's columns lie in memory that both threads see, so that telling
 * of one costs next to nothing. `script` is the bundle of slowThread.ts. A thread that fails takes the process with it:
 * the shell starts both again, and the window opens its captures anew.
 */
export function threadSlowAnswers(script: string): SlowAnswers & { end(): void } {
  const thread = new Worker(script);
  const waiting = new Map<number, (outcome: Outcome<unknown>) => void>();
  let asked = 0;
  const tell = (message: ToSlowThread): void => thread.postMessage(message);
  thread.on('message', ({ id, outcome }: FromSlowThread) => {
    waiting.get(id)?.(outcome);
    waiting.delete(id);
  });
  thread.on('error', (fault) => {
    throw fault;
  });
  return {
    hold: (key, capture) => tell({ type: 'hold', key, capture }),
    release: (key) => tell({ type: 'release', key }),
    answer: (name, ask) =>
      new Promise((resolve) => {
        const id = ++asked;
        waiting.set(id, resolve);
        const message = { type: 'ask', id, name, ask };
        thread.postMessage(message);
      }),
    end: () => void thread.terminate(),
  };
}
