// The file that says which column is what. The window exports a person's choice in this form, and the headless command
// takes it with --columns. By hand, names are enough:
//
//   { "columns": [ { "name": "Front sensor", "role": "upstreamO2", "bank": 1, "unit": "V" },
//                  { "name": "t", "role": "time" } ],
//     "rateHz": null }
//
// `name` is a heading as the file writes it, or its part without the unit, in any case; `index` counts columns from 0.
// `role` is one of core/capture/roles.ts, or "time", or "ignore". What is left out is guessed as without the file.
// `asWritten` lists repairs of the times that are not to be made (core/capture/repairs.ts): "asWritten": ["duplicateTimes"].

import { z } from 'zod';
import { REPAIR_IDS } from '../capture/repairs.ts';
import { ROLES } from '../capture/roles.ts';
import type { ColumnChoice } from '../record/schema.ts';
import { contradictionOf, names, type PlacedColumn, timesContradiction } from './columnsMisfit.ts';
import type { ColumnGuess, ColumnQuestion } from './readCapture.ts';

const columnSchema = z
  .strictObject({
    index: z.number().int().nonnegative().optional(),
    name: z.string().max(500).optional(),
    role: z.enum([...ROLES, 'time', 'ignore']),
    bank: z.union([z.literal(1), z.literal(2), z.null()]).default(null),
    sensor: z.number().int().min(1).max(8).nullable().default(null),
    unit: z.string().max(40).nullable().default(null),
  })
  .refine(({ index, name }) => index !== undefined || name !== undefined, {
    error: 'a column needs a "name" or an "index"',
  });

export const columnsFileSchema = z.strictObject({
  /** Written by the window; a file with another header is then refused. */
  headerKey: z.string().max(500).optional(),
  timeColumn: z.number().int().nonnegative().nullable().default(null),
  /** Rows a second, for a capture without times. */
  rateHz: z.number().positive().nullable().default(null),
  columns: z.array(columnSchema).max(4096).default([]),
  asWritten: z.array(z.enum(REPAIR_IDS)).max(REPAIR_IDS.length).default([]),
});
export type ColumnsFile = z.infer<typeof columnsFileSchema>;

/** Why a columns file does not fit a capture. */
export type ColumnsMisfit =
  | { readonly kind: 'otherHeader' }
  | { readonly kind: 'contradiction'; readonly words: string }
  | { readonly kind: 'noSuchColumn'; readonly name: string; readonly names: readonly string[] };

/** The choice that a columns file makes for a capture, whose question (see ReadOptions.alwaysAsk) names its columns. */
export function choiceFromFile(
  file: ColumnsFile,
  question: ColumnQuestion,
): { readonly ok: true; readonly choice: ColumnChoice } | { readonly ok: false; readonly misfit: ColumnsMisfit } {
  if (file.headerKey !== undefined && file.headerKey !== question.headerKey) {
    return { ok: false, misfit: { kind: 'otherHeader' } };
  }
  const columns: ColumnChoice['columns'] = [];
  const placed: PlacedColumn[] = [];
  const noSuch = (name: string) =>
    ({ ok: false, misfit: { kind: 'noSuchColumn', name, names: namesOf(question.guesses) } }) as const;
  const isColumn = (place: number): boolean => question.guesses.some((guess) => guess.index === place);
  if (file.timeColumn !== null && !isColumn(file.timeColumn)) return noSuch(String(file.timeColumn));
  for (const { index, name, role, bank, sensor, unit } of file.columns) {
    const place = index ?? placeOf(name ?? '', question.guesses);
    if (place === null || !isColumn(place)) return noSuch(name ?? String(index));
    columns.push({ index: place, role, bank, sensor, unit });
    placed.push({ place, name, role, bank, sensor, unit });
  }
  const words =
    contradictionOf(placed, question.guesses) ?? timesContradiction(file.timeColumn, placed, question.guesses);
  if (words !== null) return { ok: false, misfit: { kind: 'contradiction', words } };
  const timeColumn = file.timeColumn ?? placed.find(({ role }) => role === 'time')?.place ?? null;
  const choice = { headerKey: question.headerKey, timeColumn, rateHz: file.rateHz, columns };
  return { ok: true, choice: withRepairs(choice, file) };
}

/**
 * The choice that a columns file makes for a capture whose columns need none, because its standard says what they are:
 * only about its times. Null where the file says anything else, or nothing.
 */
export function choiceOfTimes(file: ColumnsFile, headerKey: string): ColumnChoice | null {
  const ofColumns = file.columns.length > 0 || file.timeColumn !== null || file.rateHz !== null;
  if (ofColumns || file.asWritten.length === 0) return null;
  return withRepairs({ headerKey, timeColumn: null, rateHz: null, columns: [] }, file);
}

function withRepairs(choice: ColumnChoice, { asWritten }: ColumnsFile): ColumnChoice {
  const undone = REPAIR_IDS.filter((id) => asWritten.includes(id));
  return undone.length === 0 ? choice : { ...choice, asWritten: undone };
}

/** A choice as a file that people can read: with the names beside the numbers of the columns. */
export function columnsFileOf(choice: ColumnChoice, guesses: readonly ColumnGuess[]): ColumnsFile {
  const names = new Map(guesses.map((guess) => [guess.index, guess.heading ?? guess.name]));
  const columns = choice.columns.map((column) => {
    const name = names.get(column.index);
    return { ...column, ...(name === undefined ? {} : { name }) };
  });
  return columnsFileSchema.parse({ ...choice, columns });
}

function namesOf(guesses: readonly ColumnGuess[]): string[] {
  return guesses.map(({ heading, name }) => heading ?? name);
}

/** Exact headings first, then names without their unit, then either in any case and without blanks. */
function placeOf(name: string, guesses: readonly ColumnGuess[]): number | null {
  const found =
    guesses.find((guess) => guess.heading === name) ??
    guesses.find((guess) => guess.name === name) ??
    guesses.find((guess) => names(guess, name));
  return found?.index ?? null;
}
