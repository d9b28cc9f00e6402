// Every refusal of the reader, in the words people see. Ids are stable.

import type { Problem } from './problem.ts';

/** A refusal as an outcome. */
export function refused(problem: Problem): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem };
}

export const REFUSALS = {
  empty: (name: string): Problem => ({
    id: 'empty',
    what: 'This file is empty.',
    where: name,
    doNext: 'Export the recording again, and check that the instrument has finished writing it.',
  }),
  cancelled: (name: string): Problem => ({
    id: 'cancelled',
    what: 'Reading was stopped.',
    where: name,
    doNext: 'Open the file again to read it.',
  }),
  noNumbers: (name: string, found: string): Problem => ({
    id: 'noNumbers',
    what: 'This file holds no rows of numbers.',
    where: name,
    doNext: `The first line reads ${found}. Choose the file in which the instrument wrote its measurements as text, such as CSV.`,
  }),
  otherDigits: (name: string): Problem => ({
    id: 'otherDigits',
    what: 'The numbers in this file are written in other digits than 0 to 9.',
    where: name,
    doNext:
      'Set the language of the program that wrote it to one with the digits 0 to 9, and export the recording again.',
  }),
  headerOnly: (name: string, row: number): Problem => ({
    id: 'headerOnly',
    what: 'This file has a header but no rows of data.',
    where: `${name}, row ${row}`,
    doNext: 'Export the recording again; the instrument wrote the names of the channels and nothing else.',
  }),
  noChannels: (name: string): Problem => ({
    id: 'noChannels',
    what: 'This file has a time column but no other column with numbers.',
    where: name,
    doNext: 'Choose which channels the instrument exports, and export the recording again.',
  }),
  tooManyColumns: (name: string, columns: number, most: number): Problem => ({
    id: 'tooManyColumns',
    what: `This file has ${columns} columns or more; at most ${most} can be read.`,
    where: name,
    doNext: 'Export fewer channels, or check whether the file was turned so that times run along the first row.',
  }),
  oldMeasurement: (name: string, version: string): Problem => ({
    id: 'unreadable',
    what: `This is a measurement file of version ${version}; only version 4 can be read.`,
    where: `${name}, byte 8`,
    doNext: 'Export the recording as MDF version 4, or as CSV.',
  }),
  encrypted: (name: string): Problem => ({
    id: 'archive',
    what: 'This archive is locked with a password.',
    where: name,
    doNext: 'Unpack it with its password, and open the recording inside.',
  }),
  turned: (name: string, first: string): Problem => ({
    id: 'turned',
    what: 'This file is turned: each row holds a channel, and time runs along the rows.',
    where: `${name}, row 1, which begins with ${first}`,
    doNext:
      'Turn rows into columns in a spreadsheet program (paste, transpose), save it as CSV, and open that file here.',
  }),
  lineTooLong: (name: string, bytes: number): Problem => ({
    id: 'lineTooLong',
    what: `This file has no line end in its first ${bytes} bytes.`,
    where: name,
    doNext: 'Choose a text export with one row for each moment.',
  }),
  notText: (name: string, where: string): Problem => ({
    id: 'notText',
    what: 'This file is not text, and its form is not one that can be read.',
    where: `${name}, ${where}`,
    doNext: 'Export the recording as CSV or another text form.',
  }),
  knownOther: (name: string, id: string, kind: string, doNext: string): Problem => ({
    id,
    what: `This file is ${kind}, and cannot be read as a recording.`,
    where: name,
    doNext,
  }),
  unreadable: (name: string, where: string, why: string): Problem => ({
    id: 'unreadable',
    what: why,
    where: where === '' ? name : `${name}, ${where}`,
    doNext: 'Copy or export the file again; it may have been damaged or cut off on the way.',
  }),
  tooLarge: (name: string, needs: number, has: number): Problem => ({
    id: 'tooLarge',
    what: `Reading this file would take about ${megabytes(needs)} MB of memory; ${megabytes(has)} MB may be used.`,
    where: name,
    doNext: 'Close other programs and captures, or export a shorter stretch or fewer channels.',
  }),
  expandsTooMuch: (name: string, how: string): Problem => ({
    id: 'expandsTooMuch',
    what: `This packed file grows to ${how} when it is unpacked; recordings do not.`,
    where: name,
    doNext: 'Do not open it unless you know where it comes from; ask the sender for the recording as plain text.',
  }),
  damaged: (name: string): Problem => ({
    id: 'damaged',
    what: 'This packed file is damaged: its content does not fit its check sum.',
    where: name,
    doNext: 'Copy it again from where it was recorded; nobody could say which of its values are wrong.',
  }),
  nested: (name: string): Problem => ({
    id: 'nested',
    what: 'This packed file holds another packed file.',
    where: name,
    doNext: 'Unpack it once, and open what is inside.',
  }),
  archive: (name: string, what: string, doNext: string): Problem => ({ id: 'archive', what, where: name, doNext }),
} as const;

function megabytes(bytes: number): string {
  return String(Math.ceil(bytes / 1e6));
}
