import type { BlockExtremes } from '../../capture/blockExtremes.ts';
import { type Range, rangeOf } from '../../capture/channelFacts.ts';
import { narrowRoom, wideRoom } from '../../capture/columnRoom.ts';
import type { StoredColumn } from './columnStore.ts';

/** A column in the order of the time axis. */
export interface OrderedColumn {
  readonly values: Float32Array | Float64Array;
  readonly decimals: number;
  readonly range: Range;
  /** Left out where the values no longer stand as they were read. */
  readonly blocks?: BlockExtremes;
}

/** A column with its values at the places that `order` says; rows that are not in it are left out. */
export function inOrder(column: StoredColumn, order: Uint32Array | null): OrderedColumn {
  if (order === null) return column;
  const values = reordered(column.values, order);
  const { decimals, range } = column;
  return { values, decimals, range: order.length < column.values.length ? rangeOf(values) : range };
}

/** Values in another order: place i gets the value that stood at order[i]. Same width as before. */
export function reordered(values: Float32Array | Float64Array, order: Uint32Array): Float32Array | Float64Array {
  const sorted = values instanceof Float32Array ? narrowRoom(order.length) : wideRoom(order.length);
  for (let i = 0; i < order.length; i++) sorted[i] = values[order[i] ?? 0] ?? Number.NaN;
  return sorted;
}
