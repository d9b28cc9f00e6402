import type { WeighedCapture } from '../../core/bridge/shellMessages.ts';
import { withoutPrivate } from '../../core/evidence/privacy.ts';
import type { Included } from '../../core/evidence/sheetInput.ts';
import type { Problem } from '../../core/reading/problem.ts';
import type { CaptureRef } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { fileName, htmlOf, tellExported } from './exportSheet.ts';
import { makeSheet, scored } from './makeSheet.ts';

/** A bundle that was written. */
export interface WrittenBundle {
  readonly name: string;
  readonly manifestSha256: string;
}

/** What can go into a bundle, by capture id; null where the work was called off, or could not be done, which is told. */
export async function weighCaptures(
  { shell, notices }: Program,
  captures: readonly CaptureRef[],
): Promise<ReadonlyMap<string, WeighedCapture> | null> {
  const asked = captures.map(({ id, sha256, name }) => ({ captureId: id, sha256, name }));
  const weighed = await shell.weighBundle({ captures: asked });
  if (weighed.ok) return new Map(weighed.captures.map((one) => [one.captureId, one]));
  if (weighed.problem.id !== 'cancelled') notices.getState().tell('export', weighed.problem);
  return null;
}

/** Packs the open vehicle with these captures, where the person says; null where it was not written. */
export async function exportBundle(
  program: Program,
  include: Included,
  captureIds: readonly string[],
): Promise<WrittenBundle | null> {
  await scored(program); // its findings are part of the record that goes with the sheet
  const whole = recordOf(program.record.getState());
  if (whole === null) return null;
  const record = withoutPrivate(whole, include);
  // The record holds the names under what was signed, so its sheet does not hide them.
  const sheet = await makeSheet(program, { ...include, signers: true }, record);
  if (sheet === null) return null;
  const suggestedName = fileName(whole.identity.name, 'tailtrace-bundle');
  const made = await program.shell.exportBundle({
    suggestedName,
    record,
    sheet: htmlOf(sheet),
    captureIds: [...captureIds],
  });
  tellExported(program, made === null || isCancelled(made.problem) ? null : made);
  if (made === null || made.problem !== null || made.manifestSha256 === null) return null;
  return { name: made.name, manifestSha256: made.manifestSha256 };
}

function isCancelled(problem: Problem | null): boolean {
  return problem?.id === 'cancelled';
}
