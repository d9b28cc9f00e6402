// What one row above the data looks like.

import { findUnit } from '../../units/findUnit.ts';
import type { DialectFound } from './dialect.ts';

/**
 * Instruments forget quotes around "O2 voltage (Bank 1, Sensor 1)": cells are joined until their brackets close. Where
 * blanks part cells, a unit in brackets belongs to the word before it.
 */
export function joinParts(row: readonly string[], found: DialectFound): readonly string[] {
  const { width, dialect } = found;
  if (row.length <= width || width < 2) return row;
  if (dialect.delimiter === ' ') return joinUnits(row, width);
  const joined: string[] = [];
  let open = 0;
  for (const cell of row) {
    const last = joined.length - 1;
    if (open > 0) joined[last] = `${joined[last] ?? ''}${dialect.delimiter}${cell}`;
    else joined.push(cell);
    open = Math.max(0, open + (cell.match(/[([{]/g)?.length ?? 0) - (cell.match(/[)\]}]/g)?.length ?? 0));
  }
  return open === 0 && joined.length >= width - 1 && joined.length <= width + 1 ? joined : row;
}

function joinUnits(row: readonly string[], width: number): readonly string[] {
  // The sign before the names of numerical programs stands over no column.
  if (row.length === width + 1 && /^(?:[#%;]+|\/\/)$/.test(row[0] ?? '')) return row.slice(1);
  const joined: string[] = [];
  for (const cell of row) {
    if (joined.length > 0 && /^[([]/.test(cell)) joined[joined.length - 1] += ` ${cell}`;
    else joined.push(cell);
  }
  return joined.length === width ? joined : row;
}

/** Whether no cell of the row holds anything. */
export function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === '');
}

/** One cell of words among rows of several: what somebody noted while recording. */
export function isRemark(row: readonly string[]): boolean {
  return row.filter((cell) => cell.trim() !== '').length === 1;
}

/** Words for how a program keeps values, which some write in a row of their own; the first are nothing else. */
const TYPE_WORD =
  /^\[?(?:(u?int(?:eger)?(?:8|16|32|64)?|[us](?:byte|word|long)|float(?:32|64)?|double)|single|real|number|numeric|decimal|string|text|char|bool(?:ean)?|date ?time|timestamp|object)\]?$/i;

/** A row between names, units and data that says nothing of them: a ruled line, or how a program keeps the values. */
export function isFurniture(row: readonly string[]): boolean {
  const filled = row.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.every((cell) => /^:?[-=_+]{2,}:?$/.test(cell))) return true;
  const types = filled.map((cell) => TYPE_WORD.exec(cell));
  return types.every((type) => type !== null) && types.some((type) => type?.[1] !== undefined);
}

/**
 * A header has about as many cells as the data, and most of them are words. Where blanks part cells and it has more words than the data have columns, nobody can say which words belong together.
 */
export function couldBeHeader(row: readonly string[], { width, dialect }: DialectFound): boolean {
  const filled = row.filter((cell) => cell.trim() !== '');
  if (dialect.delimiter === ' ' && row.length > width) return false;
  if (width >= 2 && (row.length < Math.max(2, width * 0.5) || filled.length < Math.min(2, width * 0.3))) return false;
  if (row.length > width + 2 && row.length > width * 1.5) return false;
  return (
    filled.filter((cell) => !/^[+-]?[\d.,:/ -]+$/.test(cell.trim()) || findUnit(cell) !== null).length * 2 >=
    filled.length
  );
}

/** Most filled cells are units, at least one of them other than a bare count. */
export function isUnitRow(row: readonly string[]): boolean {
  const filled = row.map((cell) => cell.trim()).filter((cell) => cell !== '');
  const units = filled.map(findUnit).filter((unit) => unit !== null);
  const bracketed = filled.filter((cell) => /^[[(].*[\])]$/.test(cell)).length;
  const real = units.some((unit) => unit.quantity !== 'count');
  return real && (units.length * 10 >= filled.length * 6 || bracketed === filled.length);
}
