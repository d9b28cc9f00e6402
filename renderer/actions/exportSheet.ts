import { sheetFormat } from '../../core/evidence/formats/index.ts';
import type { Sheet } from '../../core/evidence/sheet.ts';
import { NOTHING_PRIVATE } from '../../core/evidence/sheetInput.ts';
import type { Problem } from '../../core/reading/problem.ts';
import type { Program } from '../program/program.ts';
import { makeSheet } from './makeSheet.ts';

export type SheetKind = 'html' | 'pdf' | 'csv' | 'json' | 'md';

/** Writes a sheet where the person says, as one of its kinds. True where it was written. */
export async function exportSheet(program: Program, sheet: Sheet, kind: SheetKind): Promise<boolean> {
  const { shell } = program;
  const suggestedName = fileName(sheet.title, kind);
  if (kind === 'pdf') {
    return tellExported(program, await shell.exportPdf({ suggestedName, html: htmlOf(sheet), paper: sheet.paper }));
  }
  const content = sheetFormat(kind)?.write(sheet);
  return content !== undefined && tellExported(program, await shell.exportFile({ suggestedName, kind, content }));
}

/** Hands a sheet to the system's print dialog: this one, or else one of the vehicle as it stands, without private fields. */
export async function printSheet(program: Program, sheet?: Sheet): Promise<void> {
  const whole = sheet ?? (await makeSheet(program, NOTHING_PRIVATE));
  if (whole === null) {
    program.notices.getState().say('There is no finding, and so no sheet to print.');
    return;
  }
  const { problem } = await program.shell.printSheet({ html: htmlOf(whole), paper: whole.paper });
  if (problem !== null) program.notices.getState().tell('export', problem);
}

export function htmlOf(sheet: Sheet): string {
  return sheetFormat('html')?.write(sheet) ?? '';
}

/** Says what became of an export, and gives true where there is a file now. A person who cancelled knows. */
export function tellExported(program: Program, reply: { name: string; problem: Problem | null } | null): boolean {
  const { notices } = program;
  if (reply === null) return false;
  notices.getState().clear('export');
  if (reply.problem === null) notices.getState().say(`${reply.name} was written.`);
  else notices.getState().tell('export', reply.problem);
  return reply.problem === null;
}

/** Bytes of a name in UTF-8, with its ending: the least that a usual file system takes is 255. */
const LONGEST_NAME = 240;

/** A name that every file system takes: letters, digits, blanks, dots, dashes, not too long. */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} ._()-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return `${cutToBytes(plain, LONGEST_NAME - ending.length - 1).trimEnd() || 'Tailtrace'}.${ending}`;
}

/** As many whole characters from the beginning as fit. */
function cutToBytes(text: string, most: number): string {
  const encoder = new TextEncoder();
  const characters = [...text].slice(0, most);
  while (encoder.encode(characters.join('')).length > most) characters.pop();
  return characters.join('');
}
