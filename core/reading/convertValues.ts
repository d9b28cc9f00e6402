import { conversion } from '../units/convert.ts';
import { sameUnit } from '../units/findUnit.ts';
import { restoreDecimal } from './text/columnStore.ts';

/**
 * Values in another unit, in place. 4-byte values are converted from the number that the file meant, so that both widths
 * give the same to the last bit they hold. True where the unit is now `to`; false leaves the values as they were.
 */
export function convertValues(
  values: Float32Array | Float64Array,
  decimals: number,
  from: string,
  to: string,
): boolean {
  if (from === to || sameUnit(from, to)) return true;
  const how = conversion(from, to);
  if (how === null) return false;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    values[i] = how(decimals >= 0 ? restoreDecimal(value, decimals) : value);
  }
  return true;
}
