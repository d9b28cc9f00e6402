import type { LayoutInput } from '../layouts/layout.ts';
import type { Outcome, Problem } from '../problem.ts';
import { REFUSALS, refused } from '../refusals.ts';
import { RowFeeder } from './feedRows.ts';
import type { LineMap } from './lineMap.ts';
import { RowScanner } from './scanRows.ts';
import { add, TextTally } from './tally.ts';
import { TextCells } from './textCells.ts';
import type { TextHead } from './textPlan.ts';
import type { TextReader } from './textReaders.ts';

/** How the rows of a text are to be read, and who takes them. */
export interface ScanSetup {
  readonly kinds: Uint8Array;
  readonly readers: readonly (TextReader | null)[];
  /** Columns without which a row is dropped. */
  readonly needed: readonly number[];
  /** The column that names the channel of each row, in a text of one row a value. */
  readonly names?: number;
  /** As CellPlan.unitFor; the column's own unit where it is left out. */
  unitFor?(column: number, unit: string): string;
  /** Bytes that the values read so far take. */
  heldBytes(): number;
  /** `rows` rows of kinds.length values each; `decimals` of each column as ColumnStore.take wants it. */
  take(stage: Float64Array, rows: number, decimals: Int32Array): void;
}

export interface ScanResult {
  readonly rows: number;
  readonly bytes: number;
  readonly tally: TextTally;
  readonly lines: LineMap;
}

/** Chunks are read in pieces of this size, so that progress and cancelling do not wait for a large one. */
const PIECE = 256 * 1024;

/** Reads all rows of a text, from where the head found its data to begin. */
export async function scanText(input: LayoutInput, head: TextHead, setup: ScanSetup): Promise<Outcome<ScanResult>> {
  const tally = new TextTally();
  const { delimiter, decimal } = head.found.dialect;
  const cells = new TextCells(
    {
      ...setup,
      dialect: head.found.dialect,
      encoding: head.encoding,
      rowCells: head.found.width,
      headings: head.columns.map(({ heading }) => heading),
      unitFor: setup.unitFor ?? ((column, unit) => head.columns[column]?.sample.cellUnit ?? unit),
      sawDecimals: (column, decimals) => scanner.sawDecimals(column, decimals),
      flush: setup.take,
    },
    tally,
  );
  const scanner = new RowScanner(
    {
      delimiter: delimiter.charCodeAt(0),
      blanks: delimiter === ' ',
      decimal: decimal.charCodeAt(0),
      kinds: setup.kinds,
      names: setup.names ?? -1,
      need: setup.needed[0] ?? -1,
      firstLine: head.dataLine,
    },
    cells,
  );
  const feeder = new RowFeeder(scanner, head.onlyCr, tally);
  let bytes = 0;
  for await (const given of input.chunks) {
    // Shells hand over buffers of a class of their own; the row loops are quicker if they meet one class only.
    const chunk = new Uint8Array(given.buffer, given.byteOffset, given.byteLength);
    for (let at = 0; at < chunk.length; at += PIECE) {
      const piece = chunk.subarray(at, at + PIECE);
      const skip = Math.max(0, Math.min(piece.length, head.dataByte - bytes));
      bytes += piece.length;
      if (skip < piece.length) feeder.feed(piece.subarray(skip));
      if (!input.goesOn(scanner.rows)) return refused(REFUSALS.cancelled(input.head.name));
      const problem = overBudget(input, setup.heldBytes(), bytes);
      if (problem !== null) return refused(problem);
    }
  }
  feeder.finish();
  if (tally.openEnd && tally.cut.count === 0 && scanner.rows > 0)
    add(tally.open, scanner.lines.lineOf(scanner.rows - 1), '');
  return { ok: true, value: { rows: scanner.rows, bytes, tally, lines: scanner.lines } };
}

/** The refusal where the values need more memory than there is, with what the whole file would need; else null. */
export function overBudget(
  { head, options, bytesTotal }: LayoutInput,
  held: number,
  bytesRead: number,
): Problem | null {
  const budget = options.memoryBytes;
  if (budget === undefined || held <= budget) return null;
  const whole = bytesTotal === null || bytesRead === 0 ? held : Math.max(held, (held * bytesTotal) / bytesRead);
  return REFUSALS.tooLarge(head.name, whole, budget);
}
