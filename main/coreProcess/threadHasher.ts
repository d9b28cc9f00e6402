import { Worker } from 'node:worker_threads';
import type { Hasher } from './hasher.ts';

/** Pieces that may wait for the thread, so that a slow one does not gather the whole file in memory. */
const MOST_WAITING = 16;

/**
 * Hashes in a thread of its own, so that a long file is read while it is hashed: where the platform hashes slowly that
 * takes as long as all the rest of reading. Bytes in shared memory are not copied. `script` is the bundle of
 * hashThread.ts. A thread that fails gives no digest.
 */
export function threadHasher(script: string): Hasher {
  const thread = new Worker(script);
  let waiting = 0;
  let failed = false;
  let digest: string | null = null;
  let wake = (): void => undefined;
  const until = async (holds: () => boolean): Promise<void> => {
    while (!failed && !holds()) {
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
    }
  };
  thread.on('message', (answer: string | null) => {
    if (answer === null) waiting--;
    else digest = answer;
    wake();
  });
  const fail = (): void => {
    failed = true;
    wake();
  };
  thread.on('error', fail);
  thread.on('exit', fail);
  return {
    async take(bytes) {
      if (failed) return;
      waiting++;
      thread.postMessage(bytes);
      await until(() => waiting < MOST_WAITING);
    },
    async digest() {
      if (!failed) thread.postMessage('end');
      await until(() => digest !== null);
      void thread.terminate();
      return digest;
    },
    drop: () => void thread.terminate(),
  };
}
