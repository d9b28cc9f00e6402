import type { Problem } from '../../core/reading/problem.ts';
import type { ColumnQuestion } from '../../core/reading/readCapture.ts';
import { setColumnChoice } from '../../core/record/edits/captures.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { holdCapture } from './holdCapture.ts';
import { readPicked } from './readPicked.ts';

/** Reads a capture again with the person's choice of columns, and remembers the choice for files with the same header. */
export async function changeColumns(
  program: Program,
  captureId: string,
  choice: ColumnChoice,
): Promise<Problem | null> {
  const { captures, record, shell, notices } = program;
  const held = captures.getState().held[captureId];
  const capture = recordOf(record.getState())?.captures[captureId];
  if (held === undefined || capture === undefined) return null;
  const { name, bytes, sample } = capture;
  const outcome = await readPicked(program, { token: held.token, name, bytes, sample }, { choice });
  if (!outcome.ok) return outcome.problem;
  const { durationS, rows } = outcome.value.summary;
  const offered = holdCapture(program, captureId, { ...outcome.value, question: null });
  record.getState().edit(setColumnChoice(captureId, { columnChoice: choice, durationS, rows }));
  await offered;
  await shell.rememberColumnChoice(choice);
  notices.getState().say(`The columns of ${name} are as you chose; the choice is kept for files with the same header.`);
  return null;
}

/** Takes the guess as it is; the person has looked. */
export function keepGuess(program: Program, captureId: string): void {
  program.captures.getState().answered(captureId);
}

/** The question about a capture's columns, also where all are certain; null where its file cannot be read. */
export async function columnQuestion(program: Program, captureId: string): Promise<ColumnQuestion | null> {
  const held = program.captures.getState().held[captureId];
  if (held === undefined) return null;
  if (held.question !== null) return held.question;
  const outcome = await program.core.ask('open', { token: held.token, choice: held.choice, alwaysAsk: true });
  if (!outcome.ok) return null;
  if (outcome.value.summary.key !== held.summary.key)
    await program.core.ask('close', { key: outcome.value.summary.key });
  return outcome.value.question;
}
