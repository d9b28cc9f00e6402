import type { Capture } from '../../core/capture/capture.ts';
import type { Problem } from '../../core/reading/problem.ts';
import { type ColumnQuestion, type ReadOptions, readCapture } from '../../core/reading/readCapture.ts';
import { bytesSource } from './bytesSource.ts';

/** A text or bytes read as a capture; throws with the refusal's words where it is refused. */
export async function readText(
  text: string | Uint8Array,
  options: Partial<ReadOptions> = {},
): Promise<{ readonly capture: Capture; readonly question: ColumnQuestion | null }> {
  const outcome = await readCapture(bytesSource('drive.csv', text, 777), { choice: null, ...options });
  if (!outcome.ok) throw new Error(`${outcome.problem.id}: ${outcome.problem.what}`);
  return outcome.value;
}

/** The refusal of a text or bytes; throws where it is read. */
export async function refusalOf(text: string | Uint8Array, options: Partial<ReadOptions> = {}): Promise<Problem> {
  const outcome = await readCapture(bytesSource('drive.csv', text, 777), { choice: null, ...options });
  if (outcome.ok) throw new Error(`Read, with ${outcome.value.capture.rows} rows.`);
  return outcome.problem;
}

/** Rows of a drive that swings: time, engine speed, front and rear sensor; `row` writes them in the layout of the test. */
export function rowsOf(count: number, row: (i: number, front: string) => string, lineEnd = '\n'): string {
  return Array.from({ length: count }, (_, i) => row(i, (0.45 + 0.4 * Math.sin(i / 3)).toFixed(3)) + lineEnd).join('');
}
