import { findUnit } from './findUnit.ts';
import type { UnitRow } from './unitTable.ts';

/** A number in one unit to the same in another. */
export type Conversion = (value: number) => number;

/**
 * The conversion between two spellings of units, or null where either is unknown or they measure different things.
 * Between two spellings of the same unit it changes no bit. NaN stays NaN; a reciprocal unit turns 0 into NaN.
 */
export function conversion(from: string, to: string): Conversion | null {
  const source = findUnit(from);
  const target = findUnit(to);
  if (source === null || target === null) return null;
  return conversionBetween(source, target);
}

/** The same for two rows of the table. */
export function conversionBetween(source: UnitRow, target: UnitRow): Conversion | null {
  if (source.quantity !== target.quantity) return null;
  if (source === target) return (value) => value;
  if (source.form === 'reciprocal' || target.form === 'reciprocal') {
    return (value) => fromBase(toBase(value, source), target);
  }
  const times = source.times * target.over;
  const over = source.over * target.times;
  const { zero } = source;
  const shift = target.zero;
  return (value) => ((value - zero) * times) / over + shift;
}

/** `value` converted, or null where that is not possible. */
export function convert(value: number, from: string, to: string): number | null {
  const how = conversion(from, to);
  return how === null ? null : how(value);
}

function toBase(value: number, unit: UnitRow): number {
  if (unit.form === 'reciprocal') return value === 0 ? Number.NaN : 1 / value;
  return ((value - unit.zero) * unit.times) / unit.over;
}

function fromBase(value: number, unit: UnitRow): number {
  if (unit.form === 'reciprocal') return value === 0 ? Number.NaN : 1 / value;
  return (value * unit.over) / unit.times + unit.zero;
}
