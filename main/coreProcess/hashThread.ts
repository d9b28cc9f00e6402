// The thread of threadHasher.ts: hashes the pieces of a file as they come, answers each, and the end of the file with the
// digest.

import { createHash } from 'node:crypto';
import { parentPort } from 'node:worker_threads';

const hash = createHash('sha256');

parentPort?.on('message', (piece: Uint8Array | 'end') => {
  if (piece === 'end') {
    parentPort?.postMessage(hash.digest('hex'));
    return;
  }
  hash.update(piece);
  parentPort?.postMessage(null);
});
