// The file behind --columns: which column is what. The window writes one with a header's key and column numbers; by hand
// names are enough, and the key is found by reading the capture once without it.

import { z } from 'zod';
import { ROLES } from '../../core/capture/roles.ts';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { ColumnQuestion } from '../../core/reading/readCapture.ts';
import { parseGuardedJson } from '../../core/record/guardedJson.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';

const columnSchema = z
  .strictObject({
    index: z.number().int().nonnegative().optional(),
    name: z.string().optional(),
    role: z.enum([...ROLES, 'time', 'ignore']),
    bank: z.union([z.literal(1), z.literal(2), z.null()]).default(null),
    sensor: z.number().int().min(1).max(8).nullable().default(null),
    unit: z.string().max(40).nullable().default(null),
  })
  .refine(({ index, name }) => index !== undefined || name !== undefined, {
    error: 'a column needs a "name" or an "index"',
  });

const columnsFileSchema = z.strictObject({
  headerKey: z.string().optional(),
  timeColumn: z.number().int().nonnegative().nullable().default(null),
  rateHz: z.number().positive().nullable().default(null),
  columns: z.array(columnSchema).default([]),
});
export type ColumnsFile = z.infer<typeof columnsFileSchema>;

const LIMITS = { characters: 4_000_000, depth: 8 };

/** Reads the file's text. `where` is its name without folders. */
export function readColumnsFile(text: string, where: string): Outcome<ColumnsFile> {
  const json = parseGuardedJson(text, LIMITS);
  if (!json.ok)
    return { ok: false, problem: problem('columns.notJson', 'This columns file is not JSON that can be read.', where) };
  const read = columnsFileSchema.safeParse(json.value);
  if (read.success) return { ok: true, value: read.data };
  const [issue] = read.error.issues;
  const place = issue === undefined || issue.path.length === 0 ? 'its top' : issue.path.map(String).join('/');
  return { ok: false, problem: problem('columns.wrong', `This columns file is not understood at ${place}.`, where) };
}

/** The choice for a capture whose columns are known from reading it once. Names count in any case and without blanks. */
export function choiceFor(file: ColumnsFile, question: ColumnQuestion | null, where: string): Outcome<ColumnChoice> {
  if (question === null) {
    const what = 'The standard by which this capture was recorded says what its columns are.';
    return { ok: false, problem: { id: 'columns.notAsked', what, where, doNext: 'Leave --columns out.' } };
  }
  if (file.headerKey !== undefined && file.headerKey !== question.headerKey) {
    return {
      ok: false,
      problem: problem('columns.forAnother', 'This columns file was written for another header.', where),
    };
  }
  const places = file.columns.map((column) => column.index ?? placeOf(column.name ?? '', question));
  const lost = file.columns.find((_, i) => places[i] === null);
  if (lost !== undefined) {
    const names = question.guesses.map(({ name }) => `"${name}"`).join(', ');
    return {
      ok: false,
      problem: problem('columns.notThere', `The capture has no column "${lost.name}"; it has ${names}.`, where),
    };
  }
  const time = file.columns.findIndex(({ role }) => role === 'time');
  return {
    ok: true,
    value: {
      headerKey: question.headerKey,
      timeColumn: file.timeColumn ?? places[time] ?? null,
      rateHz: file.rateHz,
      columns: file.columns.map(({ role, bank, sensor, unit }, i) => ({
        index: places[i] ?? 0,
        role,
        bank,
        sensor,
        unit,
      })),
    },
  };
}

/** Whether a refusal is about the columns file and not about the capture. */
export function isColumnsProblem({ id }: Problem): boolean {
  return id.startsWith('columns.');
}

function placeOf(name: string, { guesses }: ColumnQuestion): number | null {
  const plain = (text: string) => text.replace(/\s+/g, '').toLowerCase();
  const found =
    guesses.find((guess) => guess.name === name) ?? guesses.find((guess) => plain(guess.name) === plain(name));
  return found?.index ?? null;
}

function problem(id: string, what: string, where: string): Problem {
  return { id, what, where, doNext: 'See "A columns file" in the text of --help.' };
}
