import { sheetFormat } from '../../core/evidence/formats/index.ts';
import type { Sheet } from '../../core/evidence/sheet.ts';
import { NOTHING_PRIVATE } from '../../core/evidence/sheetInput.ts';
import type { Problem } from '../../core/reading/problem.ts';
import type { Program } from '../program/program.ts';
import { makeSheet } from './makeSheet.ts';

export type SheetKind = 'html' | 'pdf' | 'csv' | 'json' | 'md';

/** Writes a sheet where the person says, as one of its kinds. */
export async function exportSheet(program: Program, sheet: Sheet, kind: SheetKind): Promise<void> {
  const { shell } = program;
  const suggestedName = fileName(sheet.title, kind);
  if (kind === 'pdf') {
    tellExported(program, await shell.exportPdf({ suggestedName, html: htmlOf(sheet), paper: sheet.paper }));
    return;
  }
  const content = sheetFormat(kind)?.write(sheet);
  if (content !== undefined) tellExported(program, await shell.exportFile({ suggestedName, kind, content }));
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

/** Says what became of an export. A person who cancelled knows. */
export function tellExported(program: Program, reply: { name: string; problem: Problem | null } | null): void {
  const { notices } = program;
  if (reply === null) return;
  notices.getState().clear('export');
  if (reply.problem === null) notices.getState().say(`${reply.name} was written.`);
  else notices.getState().tell('export', reply.problem);
}

/** A name that every file system takes: letters, digits, blanks, dots, dashes. */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize('NFC')
    .replace(/[^\p{L}\p{N} ._()-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return `${plain.slice(0, 120) || 'Tailtrace'}.${ending}`;
}
