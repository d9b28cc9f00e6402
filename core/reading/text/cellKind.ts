import { findUnit } from '../../units/findUnit.ts';
import { looksLikeTime } from '../timeForms/index.ts';
import { isMissingWord } from './missingWords.ts';
import { type DecimalSign, parseNumber } from './parseNumber.ts';

/** What a cell looks like by itself. 'valueUnit' is a number with its unit behind it: "0.45 V". */
export type CellKind = 'empty' | 'number' | 'time' | 'missing' | 'valueUnit' | 'text';

/** Kind of one cell under the given decimal sign. */
export function cellKind(cell: string, decimal: DecimalSign): CellKind {
  const text = cell.trim();
  if (text === '') return 'empty';
  if (text.length > 40) return 'text';
  if (!Number.isNaN(parseNumber(text, decimal))) return 'number';
  if (isMissingWord(text)) return 'missing';
  if (looksLikeTime(text)) return 'time';
  return splitValueUnit(text, decimal) === null ? 'text' : 'valueUnit';
}

/** A number followed by a known unit, or null: "0.45 V", "88°C", "1 234,5 1/min". */
export function splitValueUnit(cell: string, decimal: DecimalSign): { value: number; unit: string } | null {
  const match = /^([+\-\u2212]?[\d][\d.,'’\u00A0\u202F ]*?(?:[eE][+-]?\d+)?)\s*([^\d\s.,'+-].{0,23}|1\/min|1\/s)$/.exec(
    cell.trim(),
  );
  if (match?.[1] === undefined || match[2] === undefined) return null;
  const value = parseNumber(match[1], decimal);
  const unit = findUnit(match[2]);
  return Number.isNaN(value) || unit === null || unit.quantity === 'count' ? null : { value, unit: match[2].trim() };
}
