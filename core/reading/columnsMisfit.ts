// What a columns file may say that a capture contradicts. Refused: a choice that is only half followed would be worse.

import { ROLE_FACTS, ROLES } from '../capture/roles.ts';
import { findUnit } from '../units/findUnit.ts';
import { targetUnit } from './naming/assignRoles.ts';
import type { ColumnGuess } from './readCapture.ts';

/** One column of a columns file, found in the capture. */
export interface PlacedColumn {
  readonly place: number;
  readonly name: string | undefined;
  readonly role: string;
  readonly bank: 1 | 2 | null;
  readonly sensor: number | null;
  readonly unit: string | null;
}

/** The first contradiction between the columns of a file, and between them and the capture's, in words; null for none. */
export function contradictionOf(columns: readonly PlacedColumn[], guesses: readonly ColumnGuess[]): string | null {
  const places = new Set<number>();
  const sensors = new Map<string, string>();
  for (const column of columns) {
    const { place, name, role, bank, sensor, unit } = column;
    const guess = guesses.find(({ index }) => index === place);
    const heading = guess?.heading ?? guess?.name ?? name ?? '';
    if (guess !== undefined && name !== undefined && !names(guess, name))
      return `Column ${place} is "${heading}" in the capture, and "${name}" in the columns file.`;
    if (places.has(place)) return `The columns file names the column "${heading}" twice.`;
    places.add(place);
    const known = ROLES.find((one) => one === role);
    if (known === undefined || known === 'other') continue;
    // What the file itself gives is kept, also where nobody knows it.
    const own = guess?.unit ?? null;
    if (unit !== null && unit !== own && !fits(unit, targetUnit(known)))
      return `The unit "${unit}" of the column "${heading}" is none of ${ROLE_FACTS[known].words.toLowerCase()}.`;
    const key = [known, bank ?? 1, sensor ?? (known === 'downstreamO2' ? 2 : 1)].join(' ');
    const other = sensors.get(key);
    if (other !== undefined)
      return `The columns "${other}" and "${heading}" are both to be ${ROLE_FACTS[known].words.toLowerCase()}; one can.`;
    sensors.set(key, heading);
  }
  return null;
}

/** As contradictionOf: more than one column that is to be the time, `timeColumn` of the file among them; null for none. */
export function timesContradiction(
  timeColumn: number | null,
  columns: readonly PlacedColumn[],
  guesses: readonly ColumnGuess[],
): string | null {
  const given = columns.filter(({ role }) => role === 'time').map(({ place }) => place);
  const [first, second] = new Set(timeColumn === null ? given : [timeColumn, ...given]);
  if (first === undefined || second === undefined) return null;
  const called = (place: number): string => {
    const guess = guesses.find(({ index }) => index === place);
    return guess?.heading ?? guess?.name ?? String(place);
  };
  return `The columns "${called(first)}" and "${called(second)}" are both to be the time; one can.`;
}

/** Whether a guess is of the column with this name, in any case and without blanks. */
export function names({ heading, name }: ColumnGuess, given: string): boolean {
  const plain = (text: string): string => text.replace(/\s+/g, '').toLowerCase();
  return plain(heading ?? '') === plain(given) || plain(name) === plain(given);
}

function fits(unit: string, target: string): boolean {
  const row = findUnit(unit);
  return row !== null && (row.quantity === findUnit(target)?.quantity || row.quantity === 'count');
}
