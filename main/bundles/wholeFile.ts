import { readFile } from 'node:fs/promises';
import type { Outcome } from '../../core/reading/problem.ts';
import { changedWhileRead, openRegularFile, readProblem } from '../captures/openRegularFile.ts';

/** All bytes of a regular file, as long as it has `most` at most and nobody changes it meanwhile. `name` is for people. */
export async function wholeFile(path: string, name: string, most: number): Promise<Outcome<Uint8Array>> {
  const opened = await openRegularFile(path, name);
  if (!opened.ok) return opened;
  const { handle, bytes, modifiedMs } = opened.value;
  try {
    if (bytes > most) return { ok: false, problem: tooLong(name) };
    const whole = await readFile(handle);
    const now = await handle.stat();
    const same = now.size === bytes && now.mtimeMs === modifiedMs && whole.byteLength === bytes;
    return same ? { ok: true, value: whole } : { ok: false, problem: changedWhileRead(name) };
  } catch (fault) {
    return { ok: false, problem: readProblem(fault, name) };
  } finally {
    await handle.close();
  }
}

const tooLong = (name: string) => ({
  id: 'bundle.fileTooLong',
  what: 'This file is larger than any bundle.',
  where: name,
  doNext: 'Ask for the bundle again, or for its captures as files.',
});
