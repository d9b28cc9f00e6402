import { dirname } from 'node:path';
import type { z } from 'zod';
import { atomicWrite } from './atomicWrite.ts';
import type { FileLayer } from './fileLayer.ts';

/** A small JSON file of the program's own: settings, places, the look of a window. Not evidence, so it has no generations. */
export interface KeptFile<T> {
  /** What is kept; the start value where nothing readable is. Never rejects. */
  read(): Promise<T>;
  /** Replaces it. Calls are carried out one after the other. Rejects with the system's fault. */
  write(value: T): Promise<void>;
  /** Changes it, between other changes and never across them. */
  change(edit: (value: T) => T): Promise<T>;
}

export function keptFile<T>(files: FileLayer, path: string, schema: z.ZodType<T>, start: T): KeptFile<T> {
  let held: T | null = null;
  let queue: Promise<unknown> = Promise.resolve();

  const load = async (): Promise<T> => {
    try {
      const bytes = await files.readWhole(path);
      const read = schema.safeParse(JSON.parse(Buffer.from(bytes).toString('utf8')));
      return read.success ? read.data : start;
    } catch {
      return start; // missing at the first start, or unreadable: it holds nothing that cannot be chosen again
    }
  };
  const read = async (): Promise<T> => {
    held ??= await load();
    return held;
  };
  const write = async (value: T): Promise<void> => {
    held = value; // what was chosen holds for this run even where the disk refuses it
    await files.makeFolder(dirname(path));
    await atomicWrite(files, path, Buffer.from(`${JSON.stringify(value, null, 1)}\n`, 'utf8'));
  };
  const inTurn = <R>(job: () => Promise<R>): Promise<R> => {
    const turn = queue.then(job, job);
    queue = turn.catch(() => {});
    return turn;
  };
  return {
    read: () => inTurn(read),
    write: (value) => inTurn(() => write(value)),
    change: (edit) =>
      inTurn(async () => {
        const value = edit(await read());
        await write(value);
        return value;
      }),
  };
}
