import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import type { Sheet } from '../../core/evidence/sheet.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import { writeProblem } from '../store/fileProblem.ts';
import type { ScoreArguments } from './arguments.ts';
import { printPdf } from './printPdf.ts';
import { sheetText } from './sheetFile.ts';

/** Writes the sheet to the file that was named; relative paths are counted from `folder`. */
export async function writeSheet(
  sheet: Sheet,
  { path, ending }: NonNullable<ScoreArguments['sheet']>,
  folder: string,
): Promise<Outcome<null>> {
  const place = resolve(folder, path);
  const name = basename(place);
  try {
    if (ending === 'pdf') return await writePdf(sheet, place, name);
    await writeFile(place, sheetText(sheet, ending));
    return { ok: true, value: null };
  } catch (fault) {
    return { ok: false, problem: writeProblem(fault, name) };
  }
}

/** The shell prints the same HTML that --sheet FILE.html writes. */
async function writePdf(sheet: Sheet, place: string, name: string): Promise<Outcome<null>> {
  const aside = await mkdtemp(join(tmpdir(), 'tailtrace-sheet-'));
  try {
    const page = join(aside, 'sheet.html');
    await writeFile(page, sheetText(sheet, 'html'));
    return await printPdf(page, place, name);
  } finally {
    await rm(aside, { recursive: true, force: true });
  }
}
