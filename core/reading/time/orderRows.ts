// Rows that do not follow each other in time: put in order, or left out where a person wants the order of the file.

import type { Mending } from './mending.ts';

/** Rows in order of time. */
export interface OrderedRows {
  /** Seconds, ascending. */
  readonly timesS: Float64Array;
  /** For each place the row it came from, or null where the order of the file was kept with every row. */
  readonly order: Uint32Array | null;
}

/** Puts late rows, which have only a few rows to go back, in their place by stable insertion. `raw` is changed. */
export function orderNear(raw: Float64Array, mending: Mending): OrderedRows {
  if (mending.asWritten.has('outOfOrder')) return leaveOutLate(raw, mending);
  let order: Uint32Array | null = null;
  let late = 0;
  let first = -1;
  for (let i = 1; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    let k = i;
    while (k > 0 && (raw[k - 1] ?? 0) > value) {
      order ??= Uint32Array.from(raw, (_, n) => n);
      raw[k] = raw[k - 1] ?? 0;
      order[k] = order[k - 1] ?? 0;
      k--;
    }
    if (k === i || order === null) continue;
    raw[k] = value;
    order[k] = i;
    late++;
    if (first < 0) first = i;
  }
  if (late > 0) tell(mending, late, first, `${late} ${late === 1 ? 'row was' : 'rows were'} put in order of time.`);
  return { timesS: raw, order };
}

/** Sorts a file written newest first, or in no order at all. */
export function orderAll(raw: Float64Array, mending: Mending): OrderedRows {
  if (mending.asWritten.has('outOfOrder')) return leaveOutLate(raw, mending);
  const order = Uint32Array.from(raw, (_, n) => n);
  // Reversed first, so that rows of equal time in a file written newest first come out in the order they were taken.
  if ((raw[0] ?? 0) > (raw[raw.length - 1] ?? 0)) order.reverse();
  order.sort((a, b) => (raw[a] ?? 0) - (raw[b] ?? 0));
  tell(mending, raw.length, 1, 'The rows were not in order of time; all were sorted.');
  return { timesS: picked(raw, order), order };
}

/** Leaves out every row whose time lies before one that already stands. A time axis cannot run back. */
function leaveOutLate(raw: Float64Array, mending: Mending): OrderedRows {
  const kept = new Uint32Array(raw.length);
  let length = 0;
  let first = -1;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < raw.length; i++) {
    const value = raw[i] ?? 0;
    if (value >= highest) {
      highest = value;
      kept[length++] = i;
    } else if (first < 0) first = i;
  }
  const late = raw.length - length;
  if (late === 0) return { timesS: raw, order: null };
  const rows = late === 1 ? 'row goes back in time and was' : 'rows go back in time and were';
  tell(mending, late, first, `${late} ${rows} left out instead of being put in order; ${length} are left.`);
  const order = kept.slice(0, length);
  return { timesS: picked(raw, order), order };
}

/** Lays rows over each other by times of their own, rows of equal time in the order in which they stood. */
export function orderBy(ownS: Float64Array, { order }: OrderedRows): OrderedRows {
  let back = false;
  for (let i = 1; i < ownS.length && !back; i++) back = (ownS[i] ?? 0) < (ownS[i - 1] ?? 0);
  if (!back) return { timesS: ownS, order };
  const places = Uint32Array.from(ownS, (_, n) => n).sort((a, b) => (ownS[a] ?? 0) - (ownS[b] ?? 0) || a - b);
  return { timesS: picked(ownS, places), order: order === null ? places : places.map((place) => order[place] ?? 0) };
}

function picked(from: Float64Array, order: Uint32Array): Float64Array {
  return Float64Array.from(order, (row) => from[row] ?? 0);
}

function tell({ asWritten, rowOf, warnings }: Mending, count: number, first: number, detail: string): void {
  const repaired = !asWritten.has('outOfOrder');
  warnings.push({ id: 'outOfOrder', detail, row: rowOf(first), count, repaired });
}
