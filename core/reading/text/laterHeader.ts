import { findUnit } from '../../units/findUnit.ts';
import { conceptsIn, plainWords } from '../naming/concepts.ts';
import { splitNameAndUnit } from '../naming/splitNameAndUnit.ts';
import { parseNumber } from './parseNumber.ts';

/** Fewer cells than this are a remark, whatever they say. */
const LEAST_CELLS = 3;

/**
 * What a row among the data is, by its cells without quotes: the header again, the header of another table, or neither.
 * Another table has the same names in other places, or begins with a time and goes on with names of channels.
 */
export function laterHeader(cells: readonly string[], headings: readonly string[]): 'same' | 'other' | null {
  const names = cells.map((cell) => cell.trim());
  if (bare(names) === bare(headings)) return 'same';
  const filled = names.filter((name) => name !== '');
  if (filled.some((name) => !Number.isNaN(parseNumber(name, '.')))) return null;
  const own = new Set(headings);
  const known = filled.filter((name) => own.has(name)).length;
  const moved = names.filter((name, i) => name !== '' && name !== headings[i] && own.has(name)).length;
  if (filled.length >= LEAST_CELLS && moved >= 2) return 'other';
  if (names.some((name, i) => hasOtherUnit(name, headings[i] ?? ''))) return 'other';
  if (known * 2 > names.length) return 'same';
  return filled.length >= LEAST_CELLS && namesTimeAndChannels(filled) ? 'other' : null;
}

/** The same name with another unit: values below it are not those above. */
function hasOtherUnit(name: string, heading: string): boolean {
  if (name === heading) return false;
  const [own, first] = [splitNameAndUnit(name), splitNameAndUnit(heading)];
  if (own.name !== first.name || own.unit === null || first.unit === null) return false;
  return findUnit(own.unit) !== findUnit(first.unit);
}

/** Most cells hold an idea of a channel, the first one that of a time. */
function namesTimeAndChannels(filled: readonly string[]): boolean {
  const ideas = filled.map((name) => conceptsIn(plainWords(name)));
  const first = ideas[0];
  if (first === undefined || !(first.has('time') || first.has('date'))) return false;
  return ideas.filter(({ size }) => size > 0).length * 4 >= filled.length * 3;
}

/** Headings run together without blanks: a row that was cut at other places, inside brackets, is still the same. */
function bare(names: readonly string[]): string {
  return names.join(',').replace(/\s/g, '').replace(/,+$/, '');
}
