// The file behind --columns: which column is what; its form is core/reading/columnsFile.ts. Names are found by reading the
// capture once without it.

import { type ColumnsFile, choiceFromFile, choiceOfTimes, columnsFileSchema } from '../../core/reading/columnsFile.ts';
import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { ReadCapture } from '../../core/reading/readCapture.ts';
import { parseGuardedJson } from '../../core/record/guardedJson.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';

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

/** The choice for a capture whose columns are known from reading it once. */
export function choiceFor(file: ColumnsFile, { question, capture }: ReadCapture, where: string): Outcome<ColumnChoice> {
  const { headerKey } = capture.layout;
  if (question === null) {
    const choice = choiceOfTimes(file, headerKey);
    if (choice !== null)
      return (file.headerKey ?? headerKey) === headerKey ? { ok: true, value: choice } : forAnother(where);
    const what = 'The standard by which this capture was recorded says what its columns are.';
    return { ok: false, problem: { id: 'columns.notAsked', what, where, doNext: 'Leave --columns out.' } };
  }
  const fit = choiceFromFile(file, question);
  if (fit.ok) return { ok: true, value: fit.choice };
  if (fit.misfit.kind === 'otherHeader') return forAnother(where);
  if (fit.misfit.kind === 'contradiction')
    return { ok: false, problem: problem('columns.contradicts', fit.misfit.words, where) };
  const names = fit.misfit.names.map((name) => `"${name}"`).join(', ');
  const what = `The capture has no column "${fit.misfit.name}"; it has ${names}.`;
  return { ok: false, problem: problem('columns.notThere', what, where) };
}

function forAnother(where: string): Outcome<never> {
  return {
    ok: false,
    problem: problem('columns.forAnother', 'This columns file was written for another header.', where),
  };
}

/** Whether a refusal is about the columns file and not about the capture. */
export function isColumnsProblem({ id }: Problem): boolean {
  return id.startsWith('columns.');
}

function problem(id: string, what: string, where: string): Problem {
  return { id, what, where, doNext: 'See "A columns file" in the text of --help.' };
}
