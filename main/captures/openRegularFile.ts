import { constants } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import { faultCode } from '../store/fileLayer.ts';

/** A file open for reading, and never for writing, with what it was like when it was opened. */
export interface OpenedFile {
  readonly handle: FileHandle;
  readonly bytes: number;
  readonly modifiedMs: number;
}

/**
 * Opens a file that a person picked. Folders, pipes, sockets and devices are refused by what the open file itself says
 * it is; opening never waits for a writer. `name` is how the person knows the file.
 */
export async function openRegularFile(path: string, name: string): Promise<Outcome<OpenedFile>> {
  let handle: FileHandle;
  try {
    // Without O_NONBLOCK opening a pipe would wait for ever. Windows has neither the flag nor the need.
    handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (fault) {
    return { ok: false, problem: readProblem(fault, name) };
  }
  try {
    const found = await handle.stat();
    if (found.isFile()) return { ok: true, value: { handle, bytes: found.size, modifiedMs: found.mtimeMs } };
    await handle.close();
    return { ok: false, problem: found.isDirectory() ? folder(name) : notAFile(name) };
  } catch (fault) {
    await handle.close().catch(() => {});
    return { ok: false, problem: readProblem(fault, name) };
  }
}

/** Why a file that a person picked could not be read, in words. */
export function readProblem(fault: unknown, name: string): Problem {
  const code = faultCode(fault);
  const [what, doNext] = READING[code] ?? [
    'The file could not be read.',
    'Copy it to this computer and open the copy.',
  ];
  return { id: `notRead${code === '' ? '' : `.${code}`}`, what, where: name, doNext };
}

const VANISHED = ['The file is not there any more.', 'Look for where it is now, and open it there.'] as const;
const FORBIDDEN = [
  'You may not read this file.',
  'Ask for the right to read it, or copy it to a folder of your own.',
] as const;

const READING: Readonly<Record<string, readonly [what: string, doNext: string]>> = {
  ENOENT: VANISHED,
  ENOTDIR: VANISHED,
  ESTALE: VANISHED,
  EACCES: FORBIDDEN,
  EPERM: FORBIDDEN,
  ELOOP: ['The file is a link that leads back to itself.', 'Open the file that was meant.'],
  EISDIR: ['This is a folder.', 'Open the file in it that holds the recording.'],
  EBUSY: ['Another program has the file to itself.', 'End the recording there, then open the file again.'],
  EIO: ['The disk did not give the file out.', 'Copy the file from its instrument once more.'],
  ENXIO: ['This is not a file that holds a recording.', 'Open the file that your instrument wrote.'],
  ENODEV: ['The disk was taken out.', 'Plug it in again, then open the file.'],
  EMFILE: ['Too many files are open.', 'Close some captures, then open this one.'],
  ENAMETOOLONG: ['The name of the file is too long for this disk.', 'Give it a shorter name.'],
};

const folder = (name: string): Problem => readProblem({ code: 'EISDIR' }, name);

const notAFile = (name: string): Problem => readProblem({ code: 'ENXIO' }, name);

export const changedWhileRead = (name: string): Problem => ({
  id: 'changedWhileRead',
  what: 'The file was changed while it was being read.',
  where: name,
  doNext: 'Open it again when its instrument has finished writing.',
});
