import { type Block, needData } from './blocks.ts';

/** Raw number to physical value: offset + factor * raw, or what `other` gives; NaN where that has no number for it. */
export interface Conversion {
  readonly offset: number;
  readonly factor: number;
  readonly other: ((raw: number) => number) | null;
}

/** The raw number is the physical value. */
export const AS_IT_IS: Conversion = { offset: 0, factor: 1, other: null };

const by = (other: (raw: number) => number): Conversion => ({ ...AS_IT_IS, other });

/** The physical value of one raw number. */
export function physical({ offset, factor, other }: Conversion, raw: number): number {
  return other === null ? offset + factor * raw : other(raw);
}

const TYPES = { none: 0, linear: 1, rational: 2, tableInterpolated: 4, table: 5, rangeTable: 6 } as const;

/**
 * The conversion that a CC block describes: type u8, precision u8, flags u16, count of references u16, count of values
 * u16, physical range (two doubles), values (doubles). Linear is v0 + v1 * raw; rational is
 * (v0 raw² + v1 raw + v2) / (v3 raw² + v4 raw + v5); tables hold pairs of raw and physical. Conversions to text keep the raw number, for a
 * state is still a state without its word. Null for a type that cannot be computed here (formulas as text).
 */
export function conversion(block: Block): Conversion | null {
  needData(block, 24);
  const type = block.data.getUint8(0);
  const count = block.data.getUint16(6, true);
  needData(block, 24 + count * 8);
  const values: number[] = [];
  for (let i = 0; i < count; i++) values.push(block.data.getFloat64(24 + i * 8, true));
  const v = (index: number) => values[index] ?? 0;
  switch (type) {
    case TYPES.none:
      return AS_IT_IS;
    case TYPES.linear:
      return { offset: v(0), factor: v(1), other: null };
    case TYPES.rational:
      return by((raw) => (v(0) * raw * raw + v(1) * raw + v(2)) / (v(3) * raw * raw + v(4) * raw + v(5)));
    case TYPES.tableInterpolated:
      return by(table(values, true));
    case TYPES.table:
      return by(table(values, false));
    case TYPES.rangeTable:
      return by(rangeTable(values));
    default:
      return type >= 7 ? AS_IT_IS : null;
  }
}

/** Pairs (raw, physical), raw ascending. Outside the table the nearest end counts; between, a line or the nearer one. */
function table(values: readonly number[], interpolate: boolean): (raw: number) => number {
  const rows = Math.floor(values.length / 2);
  const rawOf = (row: number) => values[row * 2] ?? Number.NaN;
  const physicalOf = (row: number) => values[row * 2 + 1] ?? Number.NaN;
  return (raw) => {
    if (rows === 0) return Number.NaN;
    let above = 0;
    while (above < rows && rawOf(above) < raw) above++;
    if (above === 0) return physicalOf(0);
    if (above === rows) return physicalOf(rows - 1);
    const share = (raw - rawOf(above - 1)) / (rawOf(above) - rawOf(above - 1));
    if (!interpolate) return physicalOf(share < 0.5 ? above - 1 : above);
    return physicalOf(above - 1) + share * (physicalOf(above) - physicalOf(above - 1));
  };
}

/** Triples (from, to, physical), then a default. */
function rangeTable(values: readonly number[]): (raw: number) => number {
  const rows = Math.floor(values.length / 3);
  return (raw) => {
    for (let row = 0; row < rows; row++) {
      if (raw >= (values[row * 3] ?? Number.NaN) && raw <= (values[row * 3 + 1] ?? Number.NaN)) {
        return values[row * 3 + 2] ?? Number.NaN;
      }
    }
    return values[rows * 3] ?? Number.NaN;
  };
}
