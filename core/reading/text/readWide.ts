// One row a moment: a time and a value for every channel.

import type { CaptureWarning } from '../../capture/warnings.ts';
import type { ColumnChoice } from '../../record/schema.ts';
import type { LayoutInput } from '../layouts/layout.ts';
import type { Outcome } from '../problem.ts';
import type { RawChannel } from '../rawChannel.ts';
import { refused } from '../refusals.ts';
import { asWrittenOf } from '../time/asWritten.ts';
import { placeTimes } from '../time/placeTimes.ts';
import { type TimePlan, timeColumnOf } from '../time/timePlan.ts';
import { type StoredTimes, TimeStore } from '../time/timeStore.ts';
import { addColumn } from './addColumn.ts';
import { timeColumns } from './arrange.ts';
import { ColumnStore } from './columnStore.ts';
import { unnamedWarnings, wordColumnWarnings } from './columnWarnings.ts';
import { inOrder } from './inOrder.ts';
import { NUMBER, SKIP, TEXT } from './scanPlan.ts';
import { overBudget, type ScanResult, scanText } from './scanText.ts';
import { sparse } from './sparse.ts';
import { statusCode } from './statusWords.ts';
import type { TextColumn, TextHead } from './textPlan.ts';
import { statusReader, type TextReader, timeReader } from './textReaders.ts';

/** Channels of a text with their times, before roles. */
export interface TableRead {
  readonly channels: readonly RawChannel[];
  readonly scan: ScanResult;
  readonly warnings: readonly CaptureWarning[];
  /** For each place of the time axis the row it came from; null where that is the order of the file. */
  readonly order: Uint32Array | null;
  /** First time in seconds as the file has it; NaN where it has none. */
  readonly firstS: number;
}

/**
 * Reads a text of one row a moment: one channel a column of values, all on one base of times in seconds from the first
 * row, but for channels with many blanks, which get times of their own (sparse). `choice` may ask for columns that would
 * be skipped. Refusals as readLong.
 */
export async function readWide(
  input: LayoutInput,
  head: TextHead,
  time: TimePlan,
  choice: ColumnChoice | null,
): Promise<Outcome<TableRead>> {
  const { kinds, readers } = columnKinds(head, time, choice);
  const width = kinds.length;
  const timeColumn = timeColumnOf(time);
  const dateColumn = time.kind === 'dateAndClock' ? time.dateColumn : null;
  const milliColumn = time.kind === 'text' ? time.fraction : null;
  const expected = expectedRows(input, head);
  const needs = expected * 4 * kinds.filter((kind) => kind !== SKIP).length;
  const problem = overBudget({ ...input, bytesTotal: null }, needs, 0);
  if (problem !== null) return refused(problem);
  const times = new TimeStore(time.kind === 'number' ? time.over / time.times : 1, expected);
  const stores = Array.from(kinds, (kind, i) =>
    kind === SKIP || i === timeColumn || i === dateColumn || i === milliColumn
      ? null
      : new ColumnStore(false, expected),
  );
  const scanned = await scanText(input, head, {
    kinds,
    readers,
    needed: [timeColumn, dateColumn].filter((column) => column !== null),
    heldBytes: () => stores.reduce((sum, store) => sum + (store?.bytes ?? 0), times.bytes),
    take(stage, rows, decimals) {
      if (timeColumn !== null) {
        if (dateColumn !== null) addColumn(stage, timeColumn, dateColumn, width, rows, 1);
        if (milliColumn !== null) addColumn(stage, timeColumn, milliColumn, width, rows, 1000);
        times.take(stage, timeColumn, width, rows);
      }
      for (let column = 0; column < width; column++)
        stores[column]?.take(stage, column, width, rows, decimals[column] ?? 0);
    },
  });
  if (!scanned.ok) return scanned;
  const scan = scanned.value;
  const asWritten = asWrittenOf(choice, head.headerKey);
  const placed = placeTimes(timesOf(times, time, scan.rows), time, asWritten, (row) => scan.lines.lineOf(row));
  const base = placed.base(Number.isNaN(placed.firstS) ? 0 : placed.firstS);
  const channels: RawChannel[] = [];
  for (const column of head.columns) {
    const store = stores[column.index];
    if (store == null) continue;
    const { values, decimals, range, blocks } = inOrder(store.finish(), placed.order);
    const dense = sparse(values, base, range.finite);
    channels.push({
      index: column.index,
      name: column.name,
      heading: column.heading,
      unit: column.unit,
      decimals,
      range,
      ...(blocks !== undefined && dense.values === values ? { blocks } : {}),
      ...dense,
    });
  }
  const left = head.columns.filter(({ index }) => kinds[index] === SKIP);
  const odd = [...unnamedWarnings(head), ...wordColumnWarnings(left)];
  const { order, firstS } = placed;
  return { ok: true, value: { channels, scan, warnings: [...odd, ...placed.warnings], order, firstS } };
}

/** Room is made for so many rows at most before they have come: a file's size may be a lie. */
const MOST_EXPECTED = 50_000_000;

/** Rows that the rest of the file will have if it goes on as it begins, and a little more; 0 where that is not known. */
function expectedRows({ bytesTotal }: LayoutInput, { dataByte, rowBytes }: TextHead): number {
  if (bytesTotal === null || rowBytes <= 0) return 0;
  const rows = Math.ceil(((bytesTotal - dataByte) / rowBytes) * 1.03) + 16;
  return Math.max(0, Math.min(rows, MOST_EXPECTED));
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
      readers[index] = timeReader(time.form);
    } else if (time.kind === 'dateAndClock' && index === time.dateColumn) {
      kinds[index] = TEXT;
      readers[index] = timeReader(time.dateForm);
    } else if (time.kind === 'text' && index === time.fraction) {
      kinds[index] = NUMBER;
    } else if (index !== timeColumn) {
      const wanted = choice?.columns.some((one) => one.index === index && one.role !== 'ignore' && one.role !== 'time');
      kinds[index] = spare.has(index) && wanted !== true ? SKIP : valueKind(column);
      if (kinds[index] === TEXT) readers[index] = statusReader(head.found.dialect.decimal);
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

/** Without a column of times the rows themselves are counted. */
function timesOf(times: TimeStore, time: TimePlan, rows: number): StoredTimes {
  return time.kind === 'rate' ? { kind: 'regular', start: 0, step: 1, length: rows } : times.finish();
}
