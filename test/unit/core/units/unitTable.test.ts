import { describe, expect, it } from 'vitest';
import { conversionBetween } from '../../../../core/units/convert.ts';
import { findUnit } from '../../../../core/units/findUnit.ts';
import { UNIT_TABLE } from '../../../../core/units/unitTable.ts';

describe('the table of units', () => {
  it('writes no spelling twice', () => {
    const seen = new Map<string, string>();
    for (const { symbol, spellings } of UNIT_TABLE) {
      for (const spelling of spellings) {
        expect(`${spelling} of ${symbol}, before of ${seen.get(spelling) ?? 'none'}`).toBe(
          `${spelling} of ${symbol}, before of none`,
        );
        seen.set(spelling, symbol);
      }
    }
  });

  it.each(UNIT_TABLE.map((unit) => [unit.symbol, unit] as const))('finds %s by its own symbol', (symbol, unit) => {
    expect(findUnit(symbol)).toBe(unit);
    expect(findUnit(`[${symbol}]`)).toBe(unit);
  });

  it.each(UNIT_TABLE.map((unit) => [unit.symbol, unit] as const))('converts %s to its base and back', (_, unit) => {
    const base = UNIT_TABLE.find(
      (row) =>
        row.quantity === unit.quantity && row.times === 1 && row.over === 1 && row.zero === 0 && row.form === 'linear',
    );
    if (base === undefined) throw new Error(`No base unit for ${unit.quantity}`);
    const there = conversionBetween(unit, base);
    const back = conversionBetween(base, unit);
    for (const value of [0.001, 1, 14.7, -40, 98.6, 16_384]) {
      expect(back?.(there?.(value) ?? Number.NaN)).toBeCloseTo(value, 9);
    }
  });

  it('keeps spellings in the form in which they are compared', () => {
    for (const { spellings } of UNIT_TABLE) {
      for (const spelling of spellings) expect(spelling).toBe(spelling.toLowerCase().replace(/[\s.]/g, ''));
    }
  });
});
