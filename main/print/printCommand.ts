import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { PrintWish } from '../program/arguments.ts';
import { atomicWrite } from '../store/atomicWrite.ts';
import { systemFiles } from '../store/fileLayer.ts';
import { sheetToPdf } from './printSheet.ts';

/** Prints a sheet to a PDF file without a window, for the headless command. Gives the exit status. */
export async function printCommand({ sheet, pdf, paper }: PrintWish): Promise<number> {
  try {
    const bytes = await sheetToPdf(await readFile(sheet, 'utf8'), paper);
    await atomicWrite(systemFiles, pdf, bytes, { mode: 0o666 });
    return 0;
  } catch (fault) {
    process.stderr.write(`${fault instanceof Error ? fault.message : String(fault)}\n`);
    process.stderr.write(`${basename(pdf)}: The sheet could not be printed to PDF. Choose .html instead.\n`);
    return 1;
  }
}
