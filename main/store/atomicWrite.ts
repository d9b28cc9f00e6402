import { randomBytes } from 'node:crypto';
import { dirname, join } from 'node:path';
import type { FileLayer } from './fileLayer.ts';
import { faultCode } from './fileLayer.ts';

/** How long a rename is tried again while another program holds the file open. */
export interface Patience {
  readonly retryForMs: number;
  now(): number;
  wait(ms: number): Promise<void>;
}

export const systemPatience: Patience = {
  // Only Windows refuses to replace a file that a virus scanner or an indexer has open.
  retryForMs: process.platform === 'win32' ? 10_000 : 0,
  now: () => performance.now(),
  wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
};

export interface AtomicWriteOptions {
  readonly patience?: Patience;
  readonly mode?: number;
  /** Asked when the bytes are safe under a temporary name; throwing leaves the old file as it is. */
  beforeRename?(): Promise<void>;
}

/** Names of temporary files of ours, and of nobody else. */
export const TEMPORARY_NAME = /^\.tailtrace-[0-9a-f]{16}\.new$/;

/**
 * Replaces the file at `path`, or makes it. Whatever happens meanwhile, the file holds its old bytes or the new ones,
 * whole; once this resolves the new ones last over a power cut. Rejects with the system's fault, and then the old file
 * stands and nothing is left behind. Order: temporary file in the same folder, all bytes, fsync, rename, fsync of the
 * folder.
 */
export async function atomicWrite(
  files: FileLayer,
  path: string,
  bytes: Uint8Array,
  { patience = systemPatience, mode = 0o600, beforeRename }: AtomicWriteOptions = {},
): Promise<void> {
  const folder = dirname(path);
  const temporary = join(folder, `.tailtrace-${randomBytes(8).toString('hex')}.new`);
  try {
    await writeAll(files, temporary, bytes, mode);
    await beforeRename?.();
    await renamePatiently(files, temporary, path, patience);
  } catch (fault) {
    await files.remove(temporary).catch(() => {}); // it may never have been made
    throw fault;
  }
  await files.syncFolder(folder);
}

async function writeAll(files: FileLayer, path: string, bytes: Uint8Array, mode: number): Promise<void> {
  const file = await files.create(path, mode);
  try {
    for (let written = 0; written < bytes.byteLength; ) {
      const took = await file.write(bytes.subarray(written));
      if (took <= 0) throw Object.assign(new Error('the disk took no more bytes'), { code: 'ENOSPC' });
      written += took;
    }
    await file.sync();
  } finally {
    await file.close();
  }
}

async function renamePatiently(files: FileLayer, from: string, to: string, patience: Patience): Promise<void> {
  const giveUpAt = patience.now() + patience.retryForMs;
  for (let pauseMs = 20; ; pauseMs = Math.min(500, pauseMs * 2)) {
    try {
      await files.rename(from, to);
      return;
    } catch (fault) {
      const held = ['EPERM', 'EACCES', 'EBUSY'].includes(faultCode(fault));
      if (!held || patience.now() + pauseMs > giveUpAt) throw fault;
      await patience.wait(pauseMs);
    }
  }
}
