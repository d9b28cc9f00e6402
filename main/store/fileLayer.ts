// The few operations on files that everything kept on disk is made of. They stand behind an interface so that tests can
// record their order, shorten their writes and make any one of them fail.

import { constants } from 'node:fs';
import { link, mkdir, open, readdir, readFile, rename, stat, unlink } from 'node:fs/promises';

export interface FileLayer {
  /** Makes a file that must not exist yet, and opens it for writing. */
  create(path: string, mode: number): Promise<WritableFile>;
  readWhole(path: string): Promise<Uint8Array>;
  rename(from: string, to: string): Promise<void>;
  /** A second name for the same bytes. Not every file system can. */
  link(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** With all folders above it; no fault where it exists. */
  makeFolder(path: string): Promise<void>;
  list(path: string): Promise<readonly string[]>;
  stat(path: string): Promise<{ readonly bytes: number; readonly modifiedMs: number; readonly regular: boolean }>;
  /** Makes what was renamed in a folder last over a power cut. */
  syncFolder(path: string): Promise<void>;
}

export interface WritableFile {
  /** Writes some of the bytes and says how many: a full disk may take less than it was given. */
  write(bytes: Uint8Array): Promise<number>;
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** The operating system's files. */
export const systemFiles: FileLayer = {
  async create(path, mode) {
    const handle = await open(path, 'wx', mode);
    return {
      write: async (bytes) => (await handle.write(bytes, 0, bytes.byteLength)).bytesWritten,
      sync: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  readWhole: (path) => readFile(path),
  rename: (from, to) => rename(from, to),
  link: (from, to) => link(from, to),
  remove: (path) => unlink(path),
  async makeFolder(path) {
    await mkdir(path, { recursive: true, mode: 0o700 });
  },
  list: (path) => readdir(path),
  async stat(path) {
    const found = await stat(path);
    return { bytes: found.size, modifiedMs: found.mtimeMs, regular: found.isFile() };
  },
  async syncFolder(path) {
    // Windows cannot open a folder as a file; its file system keeps the order of renames in its own journal.
    if (process.platform === 'win32') return;
    const handle = await open(path, constants.O_RDONLY);
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};

/** The system's name for why an operation failed ("ENOSPC"), or '' where it gave none. */
export function faultCode(fault: unknown): string {
  if (typeof fault !== 'object' || fault === null || !('code' in fault)) return '';
  return typeof fault.code === 'string' ? fault.code : '';
}
