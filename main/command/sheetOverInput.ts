import { stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import type { Problem } from '../../core/reading/problem.ts';
import { faultCode } from '../store/fileLayer.ts';
import type { ScoreArguments } from './arguments.ts';

/**
 * Why the sheet may not be written where it was asked for: a file that is read lies there, under whatever name or link, and
 * writing would replace it. Null where it may, also where nothing can be known: writing itself then says why it fails.
 */
export async function sheetOverInput(
  { sheet, captures, columns }: Pick<ScoreArguments, 'sheet' | 'captures' | 'columns'>,
  folder: string,
): Promise<Problem | null> {
  const there = sheet === null ? null : await fileAt(resolve(folder, sheet.path));
  if (sheet === null || there === null) return null;
  for (const named of [...captures.filter((one) => one !== '-'), ...(columns === null ? [] : [columns])]) {
    const input = await fileAt(resolve(folder, named));
    if (input === null || input.ino !== there.ino || input.dev !== there.dev) continue;
    return {
      id: 'sheetOverInput',
      what: `The sheet would be written over ${basename(named)}, which is read here.`,
      where: basename(sheet.path),
      doNext: 'Give the sheet another name.',
    };
  }
  return null;
}

/** Which file lies at a place, whatever it is called; null for none that can be seen. */
async function fileAt(path: string) {
  try {
    return await stat(path, { bigint: true });
  } catch (fault) {
    if (faultCode(fault) === '') throw fault;
    return null;
  }
}
