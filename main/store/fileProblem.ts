import type { Problem } from '../../core/reading/problem.ts';
import { faultCode } from './fileLayer.ts';

const WRITING: Readonly<Record<string, readonly [what: string, doNext: string]>> = {
  ENOSPC: ['The disk is full.', 'Make room on it, then try again.'],
  EDQUOT: ['Your share of the disk is used up.', 'Make room, then try again.'],
  EFBIG: ['The file has become larger than this disk allows.', 'Choose a folder on another disk.'],
  EROFS: ['The disk can only be read.', 'Choose another folder, or unlock the disk.'],
  EACCES: ['You may not write there.', 'Choose another folder, or ask for the right to write there.'],
  EPERM: ['The system does not allow writing there.', 'Choose another folder, or close the program that has it open.'],
  EBUSY: ['Another program has the file open.', 'Close it there, then try again.'],
  ENOENT: ['The folder is not there any more.', 'Plug its disk in again, or choose another folder.'],
  ENOTDIR: ['The folder is not there any more.', 'Choose another folder.'],
  ENAMETOOLONG: ['The name is too long for this disk.', 'Choose a shorter name.'],
  EIO: ['The disk did not answer.', 'Save to another disk, and have this one looked at.'],
  ENODEV: ['The disk was taken out.', 'Plug it in again, or choose another folder.'],
  EISDIR: ['A folder has this name already.', 'Choose another name.'],
};

const UNKNOWN: readonly [string, string] = [
  'The file could not be written.',
  'Try again; if it fails again, choose another folder.',
];

/** Why writing failed, in words. `where` names the file or folder as the person knows it, never a whole path. */
export function writeProblem(fault: unknown, where: string): Problem {
  const code = faultCode(fault);
  const [what, doNext] = WRITING[code] ?? UNKNOWN;
  return { id: `notWritten${code === '' ? '' : `.${code}`}`, what, where, doNext };
}

/** The same of a record that the window still holds, and tries to save again by itself. */
export function saveProblem(fault: unknown, where: string): Problem {
  const problem = writeProblem(fault, where);
  const full = ['ENOSPC', 'EDQUOT'].includes(faultCode(fault));
  return full
    ? { ...problem, doNext: 'Make room; until then the change is kept in memory and saved by itself.' }
    : problem;
}
