import { Worker } from 'node:worker_threads';
import type { Hasher } from './hasher.ts';

/** Pieces that may wait for the thread, each in a place of its own in memory that both see. */
const PLACES = 16;
const PLACE_BYTES = 1024 * 1024;

/**
 * Hashes in a thread of its own, so that a long file is read while it is hashed: where the platform hashes slowly that
 * takes as long as all the rest of reading. Its places are used again and again, so that nothing is left for the collector.
 * `script` is the bundle of hashThread.ts. A thread that fails gives no digest.
 */
export function threadHasher(script: string): Hasher {
  const thread = new Worker(script);
  const places = new SharedArrayBuffer(PLACES * PLACE_BYTES);
  let taken = 0;
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
      for (let from = 0; from < bytes.length && !failed; from += PLACE_BYTES) {
        // Pieces are answered in their order, so that the place that comes next is the one that was free first.
        await until(() => waiting < PLACES);
        const piece = bytes.subarray(from, from + PLACE_BYTES);
        const place = new Uint8Array(places, (taken++ % PLACES) * PLACE_BYTES, piece.length);
        place.set(piece);
        waiting++;
        thread.postMessage(place);
      }
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
