import type { RepairId } from '../../core/capture/repairs.ts';
import { columnsFileOf } from '../../core/reading/columnsFile.ts';
import type { ColumnGuess } from '../../core/reading/readCapture.ts';
import { withAsWritten } from '../../core/record/asWritten.ts';
import type { ColumnChoice } from '../../core/record/schema.ts';
import type { Program } from '../program/program.ts';
import { recordOf } from '../state/recordStore.ts';
import { fileName, tellExported } from './exportSheet.ts';

/** The repairs that are undone in a capture of the record. */
export function undoneIn({ record }: Program, captureId: string): readonly RepairId[] {
  return recordOf(record.getState())?.captures[captureId]?.columnChoice?.asWritten ?? [];
}

/**
 * Writes a choice of columns, and the repairs that are undone in its capture, as a file for the headless command, where
 * the person says. `choice` null where a standard says what the columns are, and only repairs are left to tell.
 */
export async function exportColumns(
  program: Program,
  captureId: string,
  choice: ColumnChoice | null,
  guesses: readonly ColumnGuess[],
): Promise<void> {
  const capture = recordOf(program.record.getState())?.captures[captureId];
  const held = program.captures.getState().held[captureId];
  if (capture === undefined || held === undefined) return;
  const whole = withAsWritten(choice, held.summary.layout.headerKey, undoneIn(program, captureId));
  if (whole === null) return;
  const content = `${JSON.stringify(columnsFileOf(whole, guesses), null, 2)}\n`;
  const suggestedName = fileName(`${capture.name} columns`, 'json');
  tellExported(program, await program.shell.exportFile({ suggestedName, kind: 'json', content }));
}
