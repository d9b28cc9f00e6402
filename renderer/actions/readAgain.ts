import type { Outcome, Problem } from '../../core/reading/problem.ts';
import type { Reread } from '../../core/record/edits/captures.ts';
import type { Edit } from '../../core/record/edits/edit.ts';
import type { CaptureRef, ColumnChoice } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { fitView } from './fitView.ts';
import { holdCapture } from './holdCapture.ts';
import { readPicked } from './readPicked.ts';

/**
 * Reads the file of a held capture again with another choice, and takes that into the record as one step. Refused, with
 * everything as it was, where the file is gone or is no longer the one that was recorded. Gives false where the capture
 * was let go meanwhile.
 */
export async function readAgain(
  program: Program,
  captureId: string,
  choice: ColumnChoice | null,
  editOf: (captureId: string, reread: Reread) => Edit,
): Promise<Outcome<boolean>> {
  const { captures, core, record } = program;
  const held = captures.getState().held[captureId];
  const capture = recordOf(record.getState())?.captures[captureId];
  if (held === undefined || capture === undefined) return { ok: true, value: false };
  const { name, bytes, sample, sha256 } = capture;
  const outcome = await readPicked(program, { token: held.token, name, bytes, sample }, { choice });
  if (!outcome.ok) return outcome;
  const { summary, question } = outcome.value;
  const still = recordOf(record.getState())?.captures[captureId]?.sha256 === sha256;
  if (!still || summary.sha256 !== sha256) {
    void core.ask('close', { key: summary.key });
    return still ? { ok: false, problem: fileChanged(capture) } : { ok: true, value: false };
  }
  const { durationS, rows } = summary;
  const offered = holdCapture(program, captureId, { ...outcome.value, question: held.question && question });
  record.getState().edit(editOf(captureId, { columnChoice: choice, durationS, rows }));
  fitView(program, captureId, held.summary.durationS);
  await offered;
  return { ok: true, value: true };
}

function fileChanged({ name }: CaptureRef): Problem {
  return {
    id: 'fileChanged',
    what: `${name} was changed after it was opened: its hash is another one now. Nothing was changed here.`,
    where: name,
    doNext: 'Put the file back as it was, or open it as a capture of its own.',
  };
}
