// A disk in memory that forgets what was not synced. It keeps the order of all operations; from any prefix of them it
// makes the states in which a power cut may leave a real disk: bytes that were not synced are there, missing, or cut at a
// block; of the name changes that were not synced with their folder, any may have happened and any not.

import { dirname } from 'node:path';
import type { FileLayer } from '../../../main/store/fileLayer.ts';

const BLOCK = 4096;

type Operation =
  | { readonly what: 'create'; readonly path: string; readonly file: number }
  | { readonly what: 'write'; readonly file: number; readonly bytes: Uint8Array }
  | { readonly what: 'sync'; readonly file: number }
  | { readonly what: 'rename'; readonly from: string; readonly path: string }
  | { readonly what: 'link'; readonly from: string; readonly path: string }
  | { readonly what: 'remove'; readonly path: string }
  | { readonly what: 'makeFolder'; readonly path: string }
  | { readonly what: 'syncFolder'; readonly path: string };

export class CrashableDisk {
  readonly log: Operation[] = [];
  #files = 0;

  /** The names of all operations, for tests of their order. */
  get order(): string[] {
    return this.log.map((operation) => operation.what);
  }

  /** The disk as the running program sees it. */
  readonly files: FileLayer = {
    create: async (path) => {
      const file = this.#files++;
      this.log.push({ what: 'create', path, file });
      return {
        write: async (bytes) => {
          this.log.push({ what: 'write', file, bytes: bytes.slice() });
          return bytes.byteLength;
        },
        sync: async () => void this.log.push({ what: 'sync', file }),
        close: async () => {},
      };
    },
    readWhole: async (path) => readFrom(this.now(), path),
    rename: async (from, path) => this.#change({ what: 'rename', from, path }, from),
    link: async (from, path) => this.#change({ what: 'link', from, path }, from),
    remove: async (path) => this.#change({ what: 'remove', path }, path),
    makeFolder: async (path) => void this.log.push({ what: 'makeFolder', path }),
    list: async (path) => listFrom(this.now(), path),
    stat: async (path) => ({ bytes: readFrom(this.now(), path).byteLength, modifiedMs: 0, regular: true }),
    syncFolder: async (path) => void this.log.push({ what: 'syncFolder', path }),
  };

  /** Names and bytes now, nothing forgotten. */
  now(): Map<string, Uint8Array> {
    return play(this.log, this.log.length, () => true, Number.POSITIVE_INFINITY);
  }

  #change(operation: Operation, needs: string): void {
    readFrom(this.now(), needs);
    this.log.push(operation);
  }

  /** Every state that a power cut after the first `done` operations may leave. */
  *crashStates(done: number): Generator<Map<string, Uint8Array>> {
    const names = unsyncedNames(this.log, done);
    const blocks = Math.ceil(unsyncedBytes(this.log, done) / BLOCK);
    for (let chosen = 0; chosen < 2 ** names; chosen++) {
      const happened = (place: number) => (chosen & (1 << place)) !== 0;
      for (let block = 0; block <= blocks; block++) yield play(this.log, done, happened, block * BLOCK);
    }
  }
}

/** The operations up to `done`, with the unsynced name changes that `happened` and unsynced bytes up to `cut`. */
function play(
  log: readonly Operation[],
  done: number,
  happened: (place: number) => boolean,
  cut: number,
): Map<string, Uint8Array> {
  const entries = new Map<string, number>();
  const contents = new Map<number, Uint8Array[]>();
  let unsyncedSeen = 0;
  for (let i = 0; i < done; i++) {
    const operation = log[i];
    if (operation === undefined) break;
    if (operation.what === 'write') {
      const before = contents.get(operation.file) ?? [];
      const durable = syncedLater(log, i, done, operation.file);
      contents.set(operation.file, [...before, durable ? operation.bytes : operation.bytes.subarray(0, cut)]);
    }
    if (!isNameChange(operation)) continue;
    if (!folderSyncedLater(log, i, done, dirname(operation.path)) && !happened(unsyncedSeen++)) continue;
    apply(operation, entries);
  }
  return new Map([...entries].map(([path, file]) => [path, Buffer.concat(contents.get(file) ?? [])]));
}

type NameChange = Extract<Operation, { what: 'create' | 'rename' | 'link' | 'remove' }>;

function isNameChange(operation: Operation): operation is NameChange {
  return ['create', 'rename', 'link', 'remove'].includes(operation.what);
}

function apply(operation: NameChange, entries: Map<string, number>): void {
  if (operation.what === 'create') entries.set(operation.path, operation.file);
  if (operation.what === 'remove') entries.delete(operation.path);
  if (operation.what === 'link' || operation.what === 'rename') {
    const file = entries.get(operation.from);
    if (file === undefined) return;
    entries.set(operation.path, file);
    if (operation.what === 'rename') entries.delete(operation.from);
  }
}

function syncedLater(log: readonly Operation[], from: number, done: number, file: number): boolean {
  return log.slice(from, done).some((later) => later.what === 'sync' && later.file === file);
}

function folderSyncedLater(log: readonly Operation[], from: number, done: number, folder: string): boolean {
  return log.slice(from, done).some((later) => later.what === 'syncFolder' && later.path === folder);
}

function unsyncedNames(log: readonly Operation[], done: number): number {
  const isOpen = (operation: Operation, i: number) =>
    isNameChange(operation) && !folderSyncedLater(log, i, done, dirname(operation.path));
  return log.slice(0, done).filter(isOpen).length;
}

function unsyncedBytes(log: readonly Operation[], done: number): number {
  let most = 0;
  for (const [i, operation] of log.slice(0, done).entries()) {
    if (operation.what !== 'write' || syncedLater(log, i, done, operation.file)) continue;
    most = Math.max(most, operation.bytes.byteLength);
  }
  return most;
}

/** A disk that only holds what a power cut left; the program may go on with it. */
export function diskAfterCrash(state: ReadonlyMap<string, Uint8Array>): FileLayer {
  const disk = new CrashableDisk();
  let file = -1;
  for (const [path, bytes] of state) {
    disk.log.push({ what: 'create', path, file: --file }, { what: 'write', file, bytes });
  }
  return disk.files;
}

function readFrom(state: ReadonlyMap<string, Uint8Array>, path: string): Uint8Array {
  const bytes = state.get(path);
  if (bytes === undefined) throw Object.assign(new Error(`no such file: ${path}`), { code: 'ENOENT' });
  return bytes;
}

function listFrom(state: ReadonlyMap<string, Uint8Array>, folder: string): string[] {
  const start = `${folder}/`;
  const inside = [...state.keys()].filter((path) => path.startsWith(start));
  return [...new Set(inside.map((path) => path.slice(start.length).split('/')[0] ?? ''))];
}
