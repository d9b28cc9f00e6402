import { join } from 'node:path';
import type { Outcome } from '../../core/reading/problem.ts';
import { changedWhileRead } from '../captures/openRegularFile.ts';
import { atomicWrite } from '../store/atomicWrite.ts';
import { systemFiles } from '../store/fileLayer.ts';
import { writeProblem } from '../store/fileProblem.ts';
import { openBundle } from './openBundle.ts';

export interface KeepWish {
  readonly path: string;
  readonly name: string;
  /** Of the bundle as it was checked before: another one is refused. */
  readonly manifestSha256: string;
  /** Folder for the captures, of the vehicle that they belong to. */
  readonly folder: string;
}

/** For nobody to change, not even by accident: what a capture is called is in its vehicle's record. */
const READ_ONLY = 0o400;

/** Keeps the captures of a bundle as files called by their SHA-256. */
export async function keepCaptures({ path, name, manifestSha256, folder }: KeepWish): Promise<Outcome<null>> {
  const opened = await openBundle(path, name);
  if (!opened.ok) return opened;
  const { manifest, captures } = opened.value;
  if (opened.value.manifestSha256 !== manifestSha256) return { ok: false, problem: changedWhileRead(name) };
  try {
    await systemFiles.makeFolder(folder);
    for (const [i, { bytes }] of captures.entries()) {
      const called = manifest.captures[i]?.sha256;
      if (called !== undefined) await atomicWrite(systemFiles, join(folder, called), bytes, { mode: READ_ONLY });
    }
    return { ok: true, value: null };
  } catch (fault) {
    return { ok: false, problem: writeProblem(fault, `the captures of ${name}`) };
  }
}
