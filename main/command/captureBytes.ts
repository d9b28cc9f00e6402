// The bytes of a capture for the headless command: a regular file, or standard input. Hashed in the pass that reads them.

import { createHash } from 'node:crypto';
import { basename, resolve } from 'node:path';
import type { Readable } from 'node:stream';
import type { Outcome } from '../../core/reading/problem.ts';
import { type HeldBytes, SourceFault } from '../../core/service/coreHost.ts';
import { readProblem } from '../captures/openRegularFile.ts';
import { fileBytes } from '../coreProcess/fileBytes.ts';

export const STANDARD_INPUT = 'standard input';

/**
 * Opens a capture as it was named on the command line; relative paths are counted from `folder`. With `twice` it can be
 * read again from its start, for which standard input has to be kept in memory.
 */
export async function captureBytes(
  named: string,
  folder: string,
  input: Readable,
  twice: boolean,
): Promise<Outcome<HeldBytes>> {
  if (named === '-') return { ok: true, value: streamBytes(input, twice) };
  const path = resolve(folder, named);
  return fileBytes(path, basename(path));
}

/** The bytes of a stream, which come only once, hashed when they have all come. */
export function streamBytes(stream: Readable, twice: boolean): HeldBytes {
  const kept: Uint8Array[] = [];
  const hash = createHash('sha256');
  let ended = false;

  async function* chunks(): AsyncGenerator<Uint8Array, void, undefined> {
    for (const chunk of [...kept]) yield chunk;
    if (ended) return;
    try {
      for await (const chunk of stream.iterator({ destroyOnReturn: false })) {
        const bytes: Uint8Array = typeof chunk === 'string' ? Buffer.from(chunk) : chunk;
        if (twice) kept.push(bytes);
        hash.update(bytes);
        yield bytes;
      }
    } catch (fault) {
      throw new SourceFault(readProblem(fault, STANDARD_INPUT));
    }
    ended = true;
  }

  return {
    source: { name: STANDARD_INPUT, bytes: null, rereadable: twice, chunks },
    async finish() {
      for await (const _chunk of chunks()); // a reader that had seen enough
      return { ok: true, value: { sha256: hash.copy().digest('hex') } };
    },
    async close() {
      stream.destroy();
    },
  };
}
