// A time column for every channel, or for every group of channels: each value column goes with the times to its left.

import type { AsWritten } from '../../capture/repairs.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import type { ColumnChoice } from '../../record/schema.ts';
import type { LayoutInput } from '../layouts/layout.ts';
import type { Outcome } from '../problem.ts';
import type { RawChannel } from '../rawChannel.ts';
import { asWrittenOf } from '../time/asWritten.ts';
import { mendTimes } from '../time/mendTimes.ts';
import { secondsOfTimes, turnOf } from '../time/secondsOfTimes.ts';
import { timeBaseOf } from '../time/timeBaseOf.ts';
import type { TimePlan } from '../time/timePlan.ts';
import { planOf, timeColumns } from './arrange.ts';
import { ColumnStore } from './columnStore.ts';
import { reordered } from './inOrder.ts';
import type { TableRead } from './readWide.ts';
import { NUMBER, SKIP, TEXT } from './scanPlan.ts';
import { scanText } from './scanText.ts';
import type { TextColumn, TextHead } from './textPlan.ts';
import { type TextReader, timeReader } from './textReaders.ts';

interface Group {
  readonly plan: TimePlan;
  readonly time: TextColumn;
  readonly values: readonly TextColumn[];
}

/**
 * Reads a text with a time column for every channel or group of channels, in seconds from the first time of all. Rows in
 * which a channel has no time or no value are no samples of it. Refusals as readLong.
 */
export async function readPaired(
  input: LayoutInput,
  head: TextHead,
  _time: TimePlan,
  choice: ColumnChoice | null,
): Promise<Outcome<TableRead>> {
  const groups = groupsOf(head);
  const kinds = new Uint8Array(head.columns.length).fill(SKIP);
  const readers: (TextReader | null)[] = head.columns.map(() => null);
  const stores: (ColumnStore | null)[] = head.columns.map(() => null);
  for (const { time, plan, values } of groups) {
    kinds[time.index] = plan.kind === 'text' ? TEXT : NUMBER;
    if (plan.kind === 'text') readers[time.index] = timeReader(plan.form);
    stores[time.index] = new ColumnStore(true);
    for (const { index } of values) {
      kinds[index] = NUMBER;
      stores[index] = new ColumnStore(false);
    }
  }
  const scanned = await scanText(input, head, {
    kinds,
    readers,
    needed: [],
    heldBytes: () => stores.reduce((sum, store) => sum + (store?.bytes ?? 0), 0),
    take(stage, rows, decimals) {
      stores.forEach((store, column) => {
        store?.take(stage, column, kinds.length, rows, decimals[column] ?? 0);
      });
    },
  });
  if (!scanned.ok) return scanned;
  const asWritten = asWrittenOf(choice, head.headerKey);
  const taken = groups.map((group) => takeGroup(group, stores, asWritten, (row) => scanned.value.lines.lineOf(row)));
  const firstS = Math.min(
    ...taken.flatMap(({ parts }) => parts.map(({ timesS }) => timesS[0] ?? Number.POSITIVE_INFINITY)),
  );
  const channels: RawChannel[] = [];
  for (const { parts } of taken) {
    for (const { column, timesS, values, decimals } of parts) {
      const time = timeBaseOf(timesS, firstS);
      channels.push({
        index: column.index,
        name: column.name,
        heading: column.heading,
        unit: column.unit,
        time,
        values,
        decimals,
      });
    }
  }
  const warnings = taken.flatMap((one) => one.warnings);
  return {
    ok: true,
    value: {
      channels,
      scan: scanned.value,
      warnings,
      order: null,
      firstS: Number.isFinite(firstS) ? firstS : Number.NaN,
    },
  };
}

function groupsOf({ columns }: TextHead): Group[] {
  const times = timeColumns(columns);
  return times.map((time, i) => {
    const end = times[i + 1]?.index ?? columns.length;
    const plan = planOf(time, [time], true);
    const values = columns
      .slice(time.index + 1, end)
      .filter(({ sample, heading }) => sample.numeric > 0 || (sample.filled === 0 && heading !== ''));
    return { time, plan, values };
  });
}

interface Part {
  readonly column: TextColumn;
  readonly timesS: Float64Array;
  readonly values: Float32Array | Float64Array;
  readonly decimals: number;
}

/** The samples of a group's channels: those rows in which both the time and the value stand. */
function takeGroup(
  { time, plan, values }: Group,
  stores: readonly (ColumnStore | null)[],
  asWritten: AsWritten,
  rowOf: (row: number) => number,
): { parts: Part[]; warnings: CaptureWarning[] } {
  const raw = Float64Array.from(stores[time.index]?.finish().values ?? []);
  secondsOfTimes(raw, plan);
  const warnings: CaptureWarning[] = [];
  const parts = values.map((column) => {
    const stored = stores[column.index]?.finish() ?? { values: new Float64Array(0), decimals: -1 };
    const rows = Uint32Array.from(raw.keys()).filter(
      (row) => !Number.isNaN(raw[row] ?? Number.NaN) && !Number.isNaN(stored.values[row] ?? Number.NaN),
    );
    const {
      timesS,
      order,
      warnings: mended,
    } = mendTimes(
      Float64Array.from(rows, (row) => raw[row] ?? 0),
      { clock: turnOf(plan, raw), coarse: true, asWritten, rowOf: (i) => rowOf(rows[i] ?? 0) },
    );
    const values = reordered(stored.values, order === null ? rows : order.map((i) => rows[i] ?? 0));
    for (const warning of mended) warnings.push({ ...warning, detail: `“${column.name}”: ${warning.detail}` });
    return { column, timesS, values, decimals: stored.decimals };
  });
  return { parts, warnings };
}
