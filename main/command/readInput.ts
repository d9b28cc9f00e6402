import type { Readable } from 'node:stream';
import type { ReadInput } from '../../core/contract/buildCommandReport.ts';
import type { ColumnsFile } from '../../core/reading/columnsFile.ts';
import type { Outcome } from '../../core/reading/problem.ts';
import type { ReadCapture, readCapture } from '../../core/reading/readCapture.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';
import { type HeldBytes, SourceFault } from '../../core/service/coreHost.ts';
import { captureBytes } from './captureBytes.ts';
import { choiceFor } from './columnsFile.ts';

export interface InputPlace {
  readonly named: string;
  /** Place on the command line, from 1. */
  readonly input: number;
  readonly folder: string;
  readonly stdin: Readable;
  readonly read: typeof readCapture;
  /** Bytes that the values of a capture may take now. */
  memory(): Promise<number>;
}

/** What was read, with the columns that were chosen for it. */
export interface ReadWithChoice extends ReadInput {
  readonly choice: ColumnChoice | null;
}

/** The file behind --columns, or null. */
export type Columns = { readonly file: ColumnsFile; readonly name: string } | null;

/** Opens, reads and hashes one capture; every failure is a refusal with its reason. */
export async function readInput(place: InputPlace, columns: Columns): Promise<Outcome<ReadWithChoice>> {
  const opened = await captureBytes(place.named, place.folder, place.stdin, columns !== null);
  if (!opened.ok) return opened;
  try {
    return await readBytes(place, columns, opened.value, null);
  } catch (fault) {
    if (fault instanceof SourceFault) return { ok: false, problem: fault.problem };
    throw fault;
  } finally {
    await opened.value.close();
  }
}

/** The same for bytes that are open already. `recorded` is the choice of columns that counts where no file gives one. */
export async function readBytes(
  { input, read, memory }: InputPlace,
  columns: Columns,
  { source, finish }: Pick<HeldBytes, 'source' | 'finish'>,
  recorded: ColumnChoice | null,
): Promise<Outcome<ReadWithChoice>> {
  let choice = columns === null ? recorded : null;
  const memoryBytes = await memory();
  let outcome: Outcome<ReadCapture> = await read(source, { choice, alwaysAsk: columns !== null, memoryBytes });
  if (outcome.ok && columns !== null) {
    const chosen = choiceFor(columns.file, outcome.value, columns.name);
    if (!chosen.ok) return chosen;
    choice = chosen.value;
    outcome = await read(source, { choice, memoryBytes });
  }
  if (!outcome.ok) return outcome;
  const finished = await finish();
  if (!finished.ok) return finished;
  return { ok: true, value: { capture: outcome.value.capture, sha256: finished.value.sha256, input, choice } };
}
