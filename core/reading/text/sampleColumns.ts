import { timeFormOf } from '../timeForms/index.ts';
import type { TimeForm } from '../timeForms/timeForm.ts';
import { cellKind, splitValueUnit } from './cellKind.ts';
import type { DialectFound } from './dialect.ts';
import { parseNumber } from './parseNumber.ts';

/** What the cells of one column look like in the head of the file. */
export interface ColumnSample {
  /** Cells of the rows of data, in order, trimmed. */
  readonly cells: readonly string[];
  /** Their numbers; NaN where a cell is none. Parallel to `cells`. */
  readonly numbers: readonly number[];
  readonly filled: number;
  readonly numeric: number;
  readonly texts: number;
  /** The time form that reads most of the filled cells, or null. */
  readonly timeForm: TimeForm | null;
  /** Unit behind the numbers in the cells, or null. */
  readonly cellUnit: string | null;
}

/** Samples of all columns, over the rows of data of the head. */
export function sampleColumns(found: DialectFound, dataRow: number, width: number): ColumnSample[] {
  const rows = found.rows.filter((_, i) => i >= dataRow && found.isData[i] === true);
  return Array.from({ length: width }, (_, column) => sampleColumn(rows, column, found));
}

function sampleColumn(rows: readonly (readonly string[])[], column: number, { dialect }: DialectFound): ColumnSample {
  const cells = rows.map((row) => (row[column] ?? '').trim());
  const kinds = cells.map((cell) => cellKind(cell, dialect.decimal));
  const units = cells
    .filter((_, i) => kinds[i] === 'valueUnit')
    .map((cell) => splitValueUnit(cell, dialect.decimal)?.unit ?? '');
  const filled = kinds.filter((kind) => kind !== 'empty').length;
  const numbers = cells.map((cell, i) => {
    if (kinds[i] === 'valueUnit') return splitValueUnit(cell, dialect.decimal)?.value ?? Number.NaN;
    return kinds[i] === 'number' ? parseNumber(cell, dialect.decimal) : Number.NaN;
  });
  const times = kinds.filter((kind) => kind === 'time').length;
  return {
    cells,
    numbers,
    filled,
    numeric: numbers.filter((value) => !Number.isNaN(value)).length,
    texts: kinds.filter((kind) => kind === 'text').length,
    timeForm: times > 0 && times >= filled * 0.7 ? commonForm(cells) : null,
    cellUnit: units.length > 0 && units.length >= filled * 0.5 ? (units[0] ?? null) : null,
  };
}

/** The form of the first cell that has one and that reads most of the others too. */
function commonForm(cells: readonly string[]): TimeForm | null {
  const counts = new Map<TimeForm, number>();
  for (const cell of cells) {
    const form = timeFormOf(cell);
    if (form !== null) counts.set(form, (counts.get(form) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
}
