import type { Outcome } from '../../core/reading/problem.ts';
import { type HeldBytes, SourceFault } from '../../core/service/coreHost.ts';
import { changedWhileRead, openRegularFile, readProblem } from '../captures/openRegularFile.ts';
import { type Hasher, ownHasher } from './hasher.ts';

/** Large enough for the disk's full speed, small enough that another question never waits long. */
const CHUNK_BYTES = 1024 * 1024;

/**
 * The bytes of a file, hashed in the same pass in which they are read. `name` is the file's name without folders;
 * `hasherFor` gives a new hasher for each pass over so many bytes, the first one at once: one that has a thread to start
 * is ready by the time the first bytes come.
 */
export async function fileBytes(
  path: string,
  name: string,
  hasherFor: (bytes: number) => Hasher = ownHasher,
): Promise<Outcome<HeldBytes>> {
  const opened = await openRegularFile(path, name);
  if (!opened.ok) return opened;
  const { handle, bytes, modifiedMs } = opened.value;
  /** Of the last pass that came to the end. */
  let sha256: string | null = null;
  let ready: Hasher | null = hasherFor(bytes);

  async function readChunk(chunk: Uint8Array, position: number): Promise<Uint8Array> {
    const { bytesRead } = await handle.read(chunk, 0, chunk.length, position).catch((fault) => {
      throw new SourceFault(readProblem(fault, name));
    });
    return chunk.subarray(0, bytesRead);
  }

  const nextHasher = (): Hasher => {
    const hasher = ready ?? hasherFor(bytes);
    ready = null;
    return hasher;
  };

  async function* passOver(hasherOf: () => Hasher): AsyncGenerator<Uint8Array, void, undefined> {
    const hasher = hasherOf();
    sha256 = null;
    // One for the reader and one for the disk, over and over: new memory would take as long as the bytes themselves.
    let [spare, mine] = [new Uint8Array(CHUNK_BYTES), new Uint8Array(CHUNK_BYTES)];
    try {
      let next = readChunk(mine, 0);
      for (let position = 0; ; ) {
        const read = await next;
        if (read.length === 0) break;
        position += read.length;
        // The disk works on the next piece while this one is hashed and read.
        [spare, mine] = [mine, spare];
        next = readChunk(mine, position);
        next.catch(() => undefined); // told when it is its turn; a reader may have gone by then
        await hasher.take(read);
        yield read;
      }
      sha256 = await hasher.digest();
    } finally {
      hasher.drop();
    }
  }

  return {
    ok: true,
    value: {
      source: { name, bytes, rereadable: true, chunks: () => passOver(nextHasher) },
      async finish() {
        // A reader that had seen enough, or a hasher that failed.
        if (sha256 === null) for await (const _chunk of passOver(ownHasher));
        const now = await handle.stat();
        // A deleted file can be read to its end, but nobody could open the capture again.
        if (now.nlink === 0) return { ok: false, problem: readProblem({ code: 'ENOENT' }, name) };
        const same = now.size === bytes && now.mtimeMs === modifiedMs;
        if (!same || sha256 === null) return { ok: false, problem: changedWhileRead(name) };
        return { ok: true, value: { sha256 } };
      },
      close() {
        ready?.drop();
        return handle.close();
      },
    },
  };
}
