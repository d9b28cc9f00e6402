// One row a moment: a time and a value for every channel.

import type { TimeBase } from '../../capture/timeBase.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import type { ColumnChoice } from '../../record/schema.ts';
import type { LayoutInput } from '../layouts/layout.ts';
import type { Outcome } from '../problem.ts';
import type { RawChannel } from '../rawChannel.ts';
import { mendTimes } from '../time/mendTimes.ts';
import { passesMidnight, secondsOfTimes } from '../time/secondsOfTimes.ts';
import { spreadEqualTimes } from '../time/spreadEqualTimes.ts';
import { timeBaseOf } from '../time/timeBaseOf.ts';
import { type TimePlan, timeColumnOf } from '../time/timePlan.ts';
import { timeColumns } from './arrange.ts';
import { ColumnStore } from './columnStore.ts';
import { NUMBER, SKIP, TEXT } from './scanRows.ts';
import { type ScanResult, scanText } from './scanText.ts';
import { sparse } from './sparse.ts';
import { statusCode } from './statusWords.ts';
import type { TextReader } from './textCells.ts';
import type { TextColumn, TextHead } from './textPlan.ts';

/** Channels of a text with their times, before roles. */
export interface TableRead {
  readonly channels: readonly RawChannel[];
  readonly scan: ScanResult;
  readonly warnings: readonly CaptureWarning[];
  /** First time in seconds as the file has it; NaN where it has none. */
  readonly firstS: number;
}

export async function readWide(
  input: LayoutInput,
  head: TextHead,
  time: TimePlan,
  choice: ColumnChoice | null,
): Promise<Outcome<TableRead>> {
  const { kinds, readers } = columnKinds(head, time, choice);
  const width = kinds.length;
  const timeColumn = timeColumnOf(time);
  const dateColumn = time.kind === 'dateAndClock' ? time.dateColumn : -1;
  const stores = Array.from(kinds, (kind, i) =>
    kind === SKIP ? null : new ColumnStore(i === timeColumn || i === dateColumn),
  );
  const scanned = await scanText(input, head, {
    kinds,
    readers,
    needed: [timeColumn ?? -1, dateColumn].filter((column) => column >= 0),
    take(stage, rows, decimals) {
      stores.forEach((store, column) => {
        store?.take(stage, column, width, rows, decimals);
      });
    },
  });
  if (!scanned.ok) return scanned;
  const scan = scanned.value;
  const rowOf = (row: number): number => scan.lines.lineOf(row);
  const times = timeColumn === null ? null : takeTimes(stores, time, timeColumn);
  const timed = baseOf(times, time, scan.rows, rowOf);
  const channels: RawChannel[] = [];
  for (const column of head.columns) {
    const store = stores[column.index];
    if (store == null || column.index === timeColumn || column.index === dateColumn) continue;
    const { values, decimals } = store.finish();
    const ordered = timed.order === null ? values : reordered(values, timed.order);
    channels.push({
      index: column.index,
      name: column.name,
      unit: column.unit,
      decimals,
      ...sparse(ordered, timed.base),
    });
  }
  return { ok: true, value: { channels, scan, warnings: timed.warnings, firstS: timed.firstS } };
}

/** How each column is read. Texts that are no status, spare times and unnamed empty columns are skipped. */
export function columnKinds(
  head: TextHead,
  time: TimePlan,
  choice: ColumnChoice | null,
): { kinds: Uint8Array; readers: (TextReader | null)[] } {
  const spare = new Set(timeColumns(head.columns).map(({ index }) => index));
  const kinds = new Uint8Array(head.columns.length);
  const readers: (TextReader | null)[] = head.columns.map(() => null);
  const timeColumn = timeColumnOf(time);
  for (const column of head.columns) {
    const { index } = column;
    if (index === timeColumn && time.kind !== 'number' && time.kind !== 'rate') {
      kinds[index] = TEXT;
      readers[index] = { kind: 'time', form: time.form };
    } else if (time.kind === 'dateAndClock' && index === time.dateColumn) {
      kinds[index] = TEXT;
      readers[index] = { kind: 'time', form: time.dateForm };
    } else if (index !== timeColumn) {
      const wanted = choice?.columns.some((one) => one.index === index && one.role !== 'ignore' && one.role !== 'time');
      kinds[index] = spare.has(index) && wanted !== true ? SKIP : valueKind(column);
      if (kinds[index] === TEXT) readers[index] = { kind: 'status' };
    }
  }
  return { kinds, readers };
}

function valueKind({ sample, heading }: TextColumn): number {
  if (sample.filled === 0) return heading === '' ? SKIP : NUMBER;
  if (sample.numeric * 2 >= sample.filled || sample.texts === 0) return sample.timeForm === null ? NUMBER : SKIP;
  const known = sample.cells.filter((cell) => !Number.isNaN(statusCode(cell))).length;
  return known * 2 >= sample.filled ? TEXT : SKIP;
}

/** Times as seconds in the order of the file. */
function takeTimes(stores: readonly (ColumnStore | null)[], time: TimePlan, timeColumn: number): Float64Array {
  const raw = wide(stores[timeColumn]);
  secondsOfTimes(raw, time);
  if (time.kind === 'dateAndClock') {
    const days = wide(stores[time.dateColumn]);
    for (let i = 0; i < raw.length; i++) raw[i] = (raw[i] ?? 0) + (days[i] ?? 0);
  }
  return raw;
}

function wide(store: ColumnStore | null | undefined): Float64Array {
  const values = store?.finish().values ?? new Float64Array(0);
  return values instanceof Float64Array ? values : Float64Array.from(values);
}

interface Timed {
  readonly base: TimeBase;
  readonly order: Uint32Array | null;
  readonly warnings: readonly CaptureWarning[];
  readonly firstS: number;
}

function baseOf(times: Float64Array | null, time: TimePlan, rows: number, rowOf: (row: number) => number): Timed {
  if (times === null || time.kind === 'rate') {
    const rateHz = time.kind === 'rate' ? time.rateHz : 1;
    return {
      base: { kind: 'regular', startS: 0, stepS: 1 / rateHz, length: rows },
      order: null,
      warnings: [],
      firstS: Number.NaN,
    };
  }
  const mended = mendTimes(times, passesMidnight(time), rowOf);
  const spread = spreadEqualTimes(mended.timesS, rowOf);
  const firstS = mended.timesS[0] ?? 0;
  return {
    base: timeBaseOf(mended.timesS, firstS),
    order: mended.order,
    warnings: spread === null ? mended.warnings : [...mended.warnings, spread],
    firstS,
  };
}

function reordered(values: Float32Array | Float64Array, order: Uint32Array): Float32Array | Float64Array {
  const sorted = values instanceof Float32Array ? new Float32Array(values.length) : new Float64Array(values.length);
  for (let i = 0; i < order.length; i++) sorted[i] = values[order[i] ?? 0] ?? Number.NaN;
  return sorted;
}
