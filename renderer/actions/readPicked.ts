import type { CaptureSummary } from '../../core/bridge/coreMessages.ts';
import type { Picked } from '../../core/bridge/shellMessages.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import type { ColumnQuestion } from '../../core/reading/readCapture.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { openVehicleId } from '../state/recordStore.ts';

/** A file as the core read it: with the choice it was read with, and what is still not certain. */
export interface ReadFile {
  readonly picked: Picked;
  readonly summary: CaptureSummary;
  readonly question: ColumnQuestion | null;
  readonly choice: ColumnChoice | null;
}

/** How the columns of a file are found. */
export type Columns =
  /** As the core recognises them; where that is not certain, as they were chosen for a file with the same header. */
  | 'recalled'
  /** Exactly so; null as the core recognises them, whatever was chosen for other files. */
  | { readonly choice: ColumnChoice | null };

/**
 * Reads a picked file in the core's process, with progress on the page and a cancel that leaves everything as it was. It is
 * called off when the vehicle it is read for is left: the open one unless another is named, null for none.
 */
export async function readPicked(
  program: Program,
  picked: Picked,
  columns: Columns,
  vehicleId: string | null = openVehicleId(program.record.getState()),
): Promise<Outcome<ReadFile>> {
  const choice = columns === 'recalled' ? null : columns.choice;
  const { core, captures, clock } = program;
  const controller = new AbortController();
  const jobId = program.newId();
  captures.getState().addJob({
    id: jobId,
    name: picked.name,
    bytes: picked.bytes,
    startedAt: clock.now(),
    progress: null,
    ...(vehicleId === null ? {} : { vehicleId }),
    cancel: () => controller.abort(),
  });
  const open = (withChoice: ColumnChoice | null) =>
    core.ask(
      'open',
      { token: picked.token, choice: withChoice },
      { signal: controller.signal, onProgress: (progress) => captures.getState().progress(jobId, progress) },
    );
  try {
    const first = await open(choice);
    if (!first.ok) return first;
    const { summary, question } = first.value;
    if (question === null || columns !== 'recalled') return { ok: true, value: { picked, summary, question, choice } };
    const remembered = await program.shell.columnChoice({ headerKey: question.headerKey });
    if (remembered === null) return { ok: true, value: { picked, summary, question, choice } };
    await core.ask('close', { key: summary.key });
    const again = await open(remembered);
    if (!again.ok) return again;
    return { ok: true, value: { picked, ...again.value, question: null, choice: remembered } };
  } finally {
    captures.getState().endJob(jobId);
  }
}
