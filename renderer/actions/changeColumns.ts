import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { ColumnQuestion } from '../../core/reading/readCapture.ts';
import { headerChoiceOf, withAsWritten } from '../../core/record/asWritten.ts';
import { setColumnChoice } from '../../core/record/edits/captures.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { readAgain } from './readAgain.ts';

/** Reads a capture again with the person's choice of columns, and remembers the choice for files with the same header. */
export async function changeColumns(
  program: Program,
  captureId: string,
  choice: ColumnChoice,
): Promise<Problem | null> {
  const { captures, record, shell, notices } = program;
  const capture = recordOf(record.getState())?.captures[captureId];
  if (capture === undefined) return null;
  // Repairs that were undone belong to this capture, whatever its columns are.
  const own = withAsWritten(choice, choice.headerKey, capture.columnChoice?.asWritten ?? []);
  const outcome = await readAgain(program, captureId, own, setColumnChoice);
  if (!outcome.ok) return outcome.problem;
  if (!outcome.value) return null;
  captures.getState().answered(captureId);
  await shell.rememberColumnChoice(headerChoiceOf(choice));
  const words = `The columns of ${capture.name} are as you chose; the choice is kept for files with the same header.`;
  notices.getState().say(words);
  return null;
}

/** Takes the guess as it is; the person has looked. */
export function keepGuess(program: Program, captureId: string): void {
  program.captures.getState().answered(captureId);
}

/**
 * The question about a capture's columns, also where all are certain; null where its kind of file leaves nothing to choose.
 * Refused where the file cannot be read any more.
 */
export async function columnQuestion(program: Program, captureId: string): Promise<Outcome<ColumnQuestion | null>> {
  const held = program.captures.getState().held[captureId];
  if (held === undefined) return { ok: false, problem: notOpen(program, captureId) };
  if (held.question !== null) return { ok: true, value: held.question };
  const outcome = await program.core.ask('open', { token: held.token, choice: held.choice, alwaysAsk: true });
  if (!outcome.ok) return outcome;
  if (outcome.value.summary.key !== held.summary.key)
    await program.core.ask('close', { key: outcome.value.summary.key });
  return { ok: true, value: outcome.value.question };
}

function notOpen({ record }: Program, captureId: string): Problem {
  return {
    id: 'captureNotOpen',
    what: 'The file of this capture is not open, so its columns cannot be looked at.',
    where: recordOf(record.getState())?.captures[captureId]?.name ?? 'This capture',
    doNext: 'Say where the file is in the list of captures, then open its columns again.',
  };
}
