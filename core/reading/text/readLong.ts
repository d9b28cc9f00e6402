// One row a value: a time, a name, a number, perhaps a unit.

import type { TimeBase } from '../../capture/timeBase.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import type { ColumnChoice } from '../../record/schema.ts';
import { baseUnitOf } from '../../units/findUnit.ts';
import type { LayoutInput } from '../layouts/layout.ts';
import { splitNameAndUnit } from '../naming/splitNameAndUnit.ts';
import type { Outcome } from '../problem.ts';
import type { RawChannel } from '../rawChannel.ts';
import { REFUSALS, refused } from '../refusals.ts';
import { shownText } from '../shownText.ts';
import { asWrittenOf } from '../time/asWritten.ts';
import { placeTimes } from '../time/placeTimes.ts';
import { type TimePlan, timeColumnOf } from '../time/timePlan.ts';
import { addColumn } from './addColumn.ts';
import { type LongColumns, longColumns } from './arrangementOf.ts';
import { splitValueUnit } from './cellKind.ts';
import type { ChannelRows } from './channelRows.ts';
import { headerKeyOf } from './headerKey.ts';
import { inOrder } from './inOrder.ts';
import { LongRows } from './longRows.ts';
import type { TableRead } from './readWide.ts';
import { NUMBER, SKIP, TEXT } from './scanPlan.ts';
import { scanText } from './scanText.ts';
import type { TextHead } from './textPlan.ts';
import { nameReader, type TextReader, timeReader } from './textReaders.ts';

/** More names than this are no channels. */
const MOST_CHANNELS = 4096;

/** Texts to small numbers in the order of their first appearance. */
class Names {
  readonly list: string[] = [];
  private readonly codes = new Map<string, number>();

  codeOf(text: string): number {
    const known = this.codes.get(text);
    if (known !== undefined) return known;
    if (this.list.length >= MOST_CHANNELS) return Number.NaN;
    this.codes.set(text, this.list.length);
    return this.list.push(text) - 1;
  }
}

/**
 * Reads a text of one row a value into one channel a name, each with its own times in seconds from the first of all;
 * channels that were sampled together share a base. `head` must come from such a text (longColumns). A refusal where
 * reading is cancelled or needs too much memory.
 */
export async function readLong(input: LayoutInput, head: TextHead, time: TimePlan): Promise<Outcome<TableRead>> {
  const columns = longColumns(head);
  if (columns === null) return refused(REFUSALS.noNumbers(input.head.name, 'no names of channels'));
  const names = new Names();
  const units = new Names();
  const timeColumn = timeColumnOf(time);
  const dateColumn = time.kind === 'dateAndClock' ? time.dateColumn : -1;
  const milliColumn = time.kind === 'text' ? time.fraction : null;
  const kinds = new Uint8Array(head.columns.length).fill(SKIP);
  const readers: (TextReader | null)[] = head.columns.map(() => null);
  const read = (column: number, reader: TextReader): void => {
    kinds[column] = TEXT;
    readers[column] = reader;
  };
  kinds[columns.value.index] = NUMBER;
  read(
    columns.name.index,
    nameReader((text) => names.codeOf(text)),
  );
  if (columns.unit !== null)
    read(
      columns.unit.index,
      nameReader((text) => units.codeOf(text)),
    );
  if (timeColumn !== null) {
    if (time.kind === 'text' || time.kind === 'dateAndClock') read(timeColumn, timeReader(time.form));
    else kinds[timeColumn] = NUMBER;
  }
  if (time.kind === 'dateAndClock') read(dateColumn, timeReader(time.dateForm));
  if (milliColumn !== null) kinds[milliColumn] = NUMBER;
  const width = kinds.length;
  const perSecond = time.kind === 'number' ? time.over / time.times : 1;
  const { index: nameColumn } = columns.name;
  const { index: valueColumn } = columns.value;
  const rowColumns = { time: timeColumn ?? -1, value: valueColumn, unit: columns.unit?.index ?? -1 };
  const rows = new LongRows(names.list, nameColumn, rowColumns, perSecond);
  const scanned = await scanText(input, head, {
    kinds,
    readers,
    heldBytes: () => rows.bytes,
    needed: [timeColumn ?? nameColumn, nameColumn],
    names: nameColumn,
    // The units in the cells change from row to row: all values of a quantity are put into one.
    unitFor: (_, unit) => baseUnitOf(unit) ?? unit,
    take(stage, count, decimals) {
      if (timeColumn !== null && dateColumn >= 0) addColumn(stage, timeColumn, dateColumn, width, count, 1);
      if (timeColumn !== null && milliColumn !== null) addColumn(stage, timeColumn, milliColumn, width, count, 1000);
      rows.take(stage, width, count, decimals[valueColumn] ?? 0);
    },
  });
  if (!scanned.ok) return scanned;
  const { channels, warnings, firstS } = assemble(
    rows.finish(),
    units.list,
    unitsInCells(columns, head),
    time,
    input.options.choice,
  );
  return { ok: true, value: { channels, scan: scanned.value, warnings, order: null, firstS } };
}

/** Unit of each name whose values have one behind them in the head of the file: the base unit of what it measures. */
function unitsInCells({ name, value }: LongColumns, { found }: TextHead): ReadonlyMap<string, string> {
  const units = new Map<string, string>();
  value.sample.cells.forEach((cell, i) => {
    const unit = splitValueUnit(cell, found.dialect.decimal)?.unit;
    const base = unit === undefined ? null : baseUnitOf(unit);
    if (base !== null) units.set(name.sample.cells[i] ?? '', base);
  });
  return units;
}

function assemble(
  rows: readonly ChannelRows[],
  units: readonly string[],
  inCells: ReadonlyMap<string, string>,
  time: TimePlan,
  choice: ColumnChoice | null,
) {
  // The header of such a text says nothing of its channels: their names are known only now.
  const asWritten = asWrittenOf(choice, headerKeyOf(rows.map(({ name }) => name)));
  const placed = rows.map((channel) => placeTimes(channel.times.finish(), time, asWritten, () => null));
  const warnings = placed.flatMap((own, i) => own.warnings.map((warning) => about(rows[i]?.name ?? '', warning)));
  const starts = placed.map(({ firstS: own }) => own).filter((own) => !Number.isNaN(own));
  const firstS = starts.reduce((first, own) => Math.min(first, own), Number.POSITIVE_INFINITY);
  const zeroS = Number.isFinite(firstS) ? firstS : 0;
  const bases: TimeBase[] = [];
  const channels: RawChannel[] = rows.map((channel, index) => {
    const order = placed[index]?.order ?? null;
    const { values, decimals, range, blocks } = inOrder(channel.values.finish(), order);
    const base = placed[index]?.base(zeroS) ?? { kind: 'listed', timesS: new Float64Array(0) };
    const parted = splitNameAndUnit(channel.name);
    return {
      index,
      name: parted.name,
      heading: channel.name,
      unit: inCells.get(channel.name) ?? units[channel.unit] ?? parted.unit,
      time: shared(bases, base),
      values,
      decimals,
      range,
      ...(blocks === undefined ? {} : { blocks }),
    };
  });
  return { channels, warnings, firstS: Number.isFinite(firstS) ? firstS : Number.NaN };
}

function about(name: string, warning: CaptureWarning): CaptureWarning {
  return { ...warning, detail: `“${shownText(name, 60)}”: ${warning.detail}` };
}

/** Channels that were sampled together share one base. */
function shared(bases: TimeBase[], base: TimeBase): TimeBase {
  const same = bases.find((known) => sameBase(known, base));
  if (same !== undefined) return same;
  bases.push(base);
  return base;
}

function sameBase(a: TimeBase, b: TimeBase): boolean {
  if (a.kind === 'regular')
    return b.kind === 'regular' && a.startS === b.startS && a.stepS === b.stepS && a.length === b.length;
  return (
    b.kind === 'listed' && a.timesS.length === b.timesS.length && a.timesS.every((timeS, i) => timeS === b.timesS[i])
  );
}
