import { cellKind } from './cellKind.ts';
import type { DialectFound } from './dialect.ts';
import { couldBeHeader, isBlank, isFurniture, isRemark, isUnitRow, joinParts } from './headerRows.ts';

/** Where the header stands and what it says. Rows are indices into the rows of the head. */
export interface HeaderFound {
  /** One name a column; "" where the header has none. */
  readonly names: readonly string[];
  /** Unit from a row of units, or null; one entry a column. */
  readonly units: readonly (string | null)[];
  readonly nameRows: readonly number[];
  readonly unitRow: number | null;
  /** Rows between the header and the first whole row of data, passed over: "engine off". */
  readonly remarkRows: readonly number[];
  /** First row of data. */
  readonly dataRow: number;
}

const MOST_ROWS_ABOVE = 6;

/** Finds header, units and the first row of data. null where the head has no row of data. */
export function findHeader(original: DialectFound): HeaderFound | null {
  const found = { ...original, rows: original.rows.map((row) => joinParts(row, original)) };
  const { rows, width } = found;
  const dataRow = firstDataRow(found);
  if (dataRow < 0) return null;
  const above: number[] = [];
  for (let i = dataRow - 1; i >= 0 && i >= dataRow - MOST_ROWS_ABOVE; i--) {
    const row = rows[i] ?? [];
    if (isBlank(row) || isFurniture(row)) continue;
    if (couldBeHeader(row, found)) above.push(i);
    else if (above.length > 0 || !(isRemark(row) || (found.isData[i] === true && row.length <= width))) break;
  }
  // A heading that is written in every row, as of times, is no unit.
  const ownOf = (i: number): string[] => withoutRepeats(rows[i] ?? [], rows[above[above.indexOf(i) + 1] ?? -1] ?? []);
  const unitRow = above.findIndex((i) => isUnitRow(ownOf(i)));
  const unitIndex = unitRow >= 0 && unitRow <= 2 && above.length > 1 ? (above[unitRow] ?? null) : null;
  const nameRows = chooseNameRows(
    above.filter((i) => i !== unitIndex),
    found,
  );
  const names = joinNames(
    nameRows.map((i) => rows[i] ?? []),
    width,
  );
  const units = Array.from({ length: names.length }, (_, column) => {
    const cell = unitIndex === null ? '' : (ownOf(unitIndex)[column] ?? '').trim();
    return cell === '' ? null : cell;
  });
  const lowest = Math.max(unitIndex ?? -1, ...nameRows);
  const remarkRows = Array.from({ length: lowest < 0 ? 0 : dataRow - lowest - 1 }, (_, k) => lowest + 1 + k).filter(
    (i) => !isBlank(rows[i] ?? []) && !isFurniture(rows[i] ?? []),
  );
  return { names, units, nameRows, unitRow: unitIndex, remarkRows, dataRow };
}

/** Rows looked at behind a candidate, blank ones not counted, and how many of them must be data. */
const FOLLOWING = 8;
/** Rows of data, from the end of the head, that tell which columns hold numbers. */
const LAST_ROWS = 20;

/** The first row of data that is as wide as most and followed by more of them; or else the first there is. */
function firstDataRow(found: DialectFound): number {
  const { isData, rows, width } = found;
  const numeric = numericColumns(found);
  for (let i = 0; i < isData.length; i++) {
    const own = rows[i] ?? [];
    if (!isData[i] || own.length < width - 1 || own.length > width + 1) continue;
    if (numeric.some((column) => cellKind(own[column] ?? '', found.dialect.decimal) === 'text')) continue;
    const next: boolean[] = [];
    for (let k = i + 1; k < isData.length && next.length < FOLLOWING; k++)
      if (!isBlank(rows[k] ?? [])) next.push(isData[k] === true);
    if (next[0] !== false && next.filter(Boolean).length * 4 >= next.length * 3) return i;
  }
  return isData.indexOf(true);
}

/** Columns that hold numbers or times in most rows of data: free text that happens to hold a number does not. */
function numericColumns({ isData, rows, width, dialect }: DialectFound): number[] {
  const data = rows.filter((_, i) => isData[i] === true).slice(-LAST_ROWS);
  return Array.from({ length: width }, (_, column) => column).filter((column) => {
    const kinds = data.map((row) => cellKind(row[column] ?? '', dialect.decimal)).filter((kind) => kind !== 'empty');
    return kinds.filter((kind) => kind !== 'text').length > kinds.length * 0.8;
  });
}

/**
 * The row right above the data, and the one above that where the lower one does not tell columns apart by itself (names
 * repeat or are missing) or the upper one stands over groups of columns, and is as wide.
 */
function chooseNameRows(above: readonly number[], { rows, width }: DialectFound): number[] {
  const [lower, upper] = above;
  if (lower === undefined) return [];
  if (upper === undefined) return [lower];
  const pair = [rows[upper] ?? [], rows[lower] ?? []] as const;
  const helps = repeats(pair[1]) && different(joinNames(pair, width)) > different(pair[1]);
  if (!helps && !standsOver(pair[0])) return [lower];
  return pair[0].length >= width - 1 ? [upper, lower] : [lower];
}

/** How many columns the names tell apart. */
function different(names: readonly string[]): number {
  return new Set(names.map((name) => name.trim().toLowerCase()).filter((name) => name !== '')).size;
}

/** A row without the cells that only say again what stands above them. */
function withoutRepeats(row: readonly string[], above: readonly string[]): string[] {
  return row.map((cell, column) => (cell.trim() === (above[column] ?? '').trim() ? '' : cell));
}

/** A row of headings over groups of columns leaves the first column, the time, without one. */
function standsOver(row: readonly string[]): boolean {
  return (row[0] ?? '').trim() === '' && row.some((cell) => cell.trim() !== '');
}

function repeats(row: readonly string[]): boolean {
  const names = row.map((cell) => cell.trim().toLowerCase());
  const filled = names.filter((name) => name !== '');
  return new Set(filled).size < filled.length || filled.length < names.length - 1;
}

/** Names of one row, or of two joined; a blank in the upper row repeats the name to its left, as merged cells do. */
function joinNames(nameRows: readonly (readonly string[])[], width: number): string[] {
  const [first, second] = nameRows;
  const length = Math.max(width, first?.length ?? 0, second?.length ?? 0);
  let left = '';
  return Array.from({ length }, (_, column) => {
    const cell = (first?.[column] ?? '').trim();
    if (second === undefined) return cell;
    const below = (second[column] ?? '').trim();
    if (cell !== '') left = cell;
    return cell === '' && below === '' ? '' : `${left} ${below}`.trim();
  });
}
