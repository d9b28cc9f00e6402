import { type OpenedBundle, readBundle } from '../../core/evidence/bundle/readBundle.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import { CORE_VERSION } from '../../core/version.ts';
import { sha256Of } from '../store/sealedRecord.ts';
import { LARGEST_BUNDLE_FILE } from './bundleSizes.ts';
import { wholeFile } from './wholeFile.ts';

/** A bundle that is as it was made, and the hash of its file. */
export interface CheckedBundle extends OpenedBundle {
  readonly fileSha256: string;
}

/** Opens the bundle at `path` and checks all of it; `name` is the file's name without folders. */
export async function openBundle(path: string, name: string): Promise<Outcome<CheckedBundle>> {
  const file = await wholeFile(path, name, LARGEST_BUNDLE_FILE);
  if (!file.ok) return file;
  const opened = await readBundle(file.value, name, { sha256: sha256Of, coreVersion: CORE_VERSION });
  return opened.ok ? { ok: true, value: { ...opened.value, fileSha256: sha256Of(file.value) } } : opened;
}
