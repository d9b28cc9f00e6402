import { BLANK, CR, LF, type OddCells, QUOTE, SKIP } from './scanPlan.ts';

/** A column that is skipped, or whose cells are words or times; `length` of each cell in bytes, `after` what follows it. */
export interface WordForm {
  readonly column: number;
  readonly kind: number;
  readonly length: number;
  readonly after: number;
}

/**
 * As alikeNumbers, for a column of cells of one length that hold words or times in their usual form, or are skipped. The
 * first cell that is longer or shorter, in quotes, empty or in another form ends it. `view` lies over `bytes`.
 */
export function alikeWords(
  bytes: Uint8Array,
  view: DataView,
  from: number,
  stride: number,
  rows: number,
  { column, kind, length, after }: WordForm,
  delimiter: number,
  cells: OddCells,
  values: Float64Array,
  at: number,
  width: number,
): number {
  let value = Number.NaN;
  for (let row = 0, start = from, k = at; row < rows; row++, start += stride, k += width) {
    const end = start + length;
    // Most words say again what the cell above them says.
    if (row > 0 && bytes[end] === after && isSame(view, start, start - stride, length)) {
      values[k] = value;
      continue;
    }
    let pos = start;
    let c = bytes[pos];
    if (c === QUOTE || c === BLANK) return row;
    while (c !== delimiter && c !== LF && c !== CR && pos < end) c = bytes[++pos];
    if (pos !== end || c !== after) return row;
    value = kind === SKIP ? Number.NaN : cells.quick(column, bytes, start, end);
    if (kind !== SKIP && Number.isNaN(value)) return row;
    values[k] = value;
  }
  return rows;
}

/** Whether the same `length` bytes stand in two places. */
function isSame(view: DataView, one: number, other: number, length: number): boolean {
  let i = 0;
  for (; i + 4 <= length; i += 4) if (view.getInt32(one + i) !== view.getInt32(other + i)) return false;
  for (; i < length; i++) if (view.getUint8(one + i) !== view.getUint8(other + i)) return false;
  return true;
}
