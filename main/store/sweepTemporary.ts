import { join } from 'node:path';
import { TEMPORARY_NAME } from './atomicWrite.ts';
import type { FileLayer } from './fileLayer.ts';

const STALE_MS = 60 * 60 * 1000;

/**
 * Removes temporary files that a killed program left behind: those with our own name pattern that are older than an
 * hour, so that a save under way somewhere else is never touched. Returns how many went. Never rejects.
 */
export async function sweepTemporary(files: FileLayer, folder: string, nowMs: number): Promise<number> {
  const names = await files.list(folder).catch((): readonly string[] => []);
  let swept = 0;
  for (const name of names) {
    if (!TEMPORARY_NAME.test(name)) continue;
    const path = join(folder, name);
    try {
      const { modifiedMs, regular } = await files.stat(path);
      if (!regular || nowMs - modifiedMs < STALE_MS) continue;
      await files.remove(path);
      swept++;
    } catch {
      // Gone meanwhile, or not ours to remove: the next start tries again.
    }
  }
  return swept;
}
