// A text from its head to a capture, whatever its arrangement.

import type { CaptureWarning } from '../../capture/warnings.ts';
import { finishCapture } from '../finishCapture.ts';
import type { LayoutInput } from '../layouts/layout.ts';
import { conceptsIn, plainWords } from '../naming/concepts.ts';
import type { Outcome } from '../problem.ts';
import { questionFor } from '../questionFor.ts';
import type { ColumnGuess, ReadCapture } from '../readCapture.ts';
import { REFUSALS, refused } from '../refusals.ts';
import { shownText } from '../shownText.ts';
import { startClockOf } from '../time/startClockOf.ts';
import { type TimePlan, timeColumnOf } from '../time/timePlan.ts';
import { findTime, isNamedTime } from './arrange.ts';
import { headerKeyOf } from './headerKey.ts';
import { isBlank } from './headerRows.ts';
import { layoutWords } from './layoutWords.ts';
import { openText, textChunks } from './openText.ts';
import { readLong } from './readLong.ts';
import { readPaired } from './readPaired.ts';
import { readWide, type TableRead } from './readWide.ts';
import { type Arrangement, MOST_COLUMNS, type TextHead } from './textPlan.ts';
import { textWarnings } from './textWarnings.ts';

const LAYOUT_IDS = { wide: 'wideText', long: 'longText', paired: 'pairedText' } as const;
const READERS = { wide: readWide, long: readLong, paired: readPaired } as const;

/**
 * Reads a text of the given arrangement: rows, times, roles, units, warnings and the question about columns. Refuses
 * what has no rows of numbers, too many columns, no channel beside the times, or is cancelled.
 */
export async function readTable(input: LayoutInput, kind: Arrangement['kind']): Promise<Outcome<ReadCapture>> {
  const { head, encoding } = openText(input.head);
  if (head === null) return refused(REFUSALS.noNumbers(input.head.name, 'no row of numbers'));
  const { name } = input.head;
  if (head.columns.length > MOST_COLUMNS)
    return refused(REFUSALS.tooManyColumns(name, head.columns.length, MOST_COLUMNS));
  const chosen = input.options.choice?.headerKey === head.headerKey ? input.options.choice : null;
  const time = findTime(head, chosen);
  // UTF-16 takes two bytes for what the row loop reads as one.
  const wide = encoding.encoding === 'utf16le' || encoding.encoding === 'utf16be';
  const bytesTotal = wide && input.bytesTotal !== null ? input.bytesTotal / 2 : input.bytesTotal;
  const text: LayoutInput = { ...input, bytesTotal, chunks: textChunks(input.chunks, encoding) };
  const outcome = await READERS[kind](text, head, time, chosen);
  if (!outcome.ok) return outcome;
  const table = outcome.value;
  if (table.scan.rows === 0) return refused(REFUSALS.headerOnly(name, head.dataLine - 1));
  if (table.scan.rows < 3 && time.kind === 'rate' && head.header.nameRows.length === 0) {
    return refused(REFUSALS.noNumbers(name, `“${shownText(head.found.rows[0]?.join(' ') ?? '', 60)}”`));
  }
  if (isTurned(head)) return refused(REFUSALS.turned(name, `“${shownText(head.found.rows[0]?.[0] ?? '', 40)}”`));
  if (table.channels.length === 0) return refused(REFUSALS.noChannels(name));
  return { ok: true, value: toCapture(input, head, { kind, time }, table) };
}

/** Without a header, and every row begins with the name of a channel and is longer than the file has rows. */
function isTurned({ header, columns, found }: TextHead): boolean {
  const names = columns[0]?.sample.cells ?? [];
  if (header.nameRows.length > 0 || names.length < 2 || columns.length < 10 * names.length) return false;
  const rest = columns.slice(1).every(({ sample }) => sample.texts === 0);
  return rest && found.isData.every((is, i) => is || isBlank(found.rows[i] ?? [])) && names.every(namesChannel);
}

function namesChannel(cell: string): boolean {
  return conceptsIn(plainWords(cell)).size > 0;
}

function toCapture(input: LayoutInput, head: TextHead, arrangement: Arrangement, table: TableRead): ReadCapture {
  const { time, kind } = arrangement;
  const headerKey = kind === 'long' ? headerKeyOf(table.channels.map(({ heading }) => heading ?? '')) : head.headerKey;
  const choice = input.options.choice?.headerKey === headerKey ? input.options.choice : null;
  const warnings = [...textWarnings(head, table.scan.tally, kind), ...table.warnings, ...timePlanWarnings(head, time)];
  const firstCell = head.columns[timeColumnOf(time) ?? -1]?.sample.cells.find((cell) => cell !== '') ?? '';
  const finished = finishCapture(
    {
      name: input.head.name,
      bytes: table.scan.bytes,
      rows: table.scan.rows,
      startClock: startClockOf(time, table.firstS, firstCell),
      channels: table.channels,
      warnings,
      layout: { id: LAYOUT_IDS[kind], words: layoutWords(head, arrangement), headerKey },
      rowOf: (place) => table.scan.lines.lineOf(table.order?.[place] ?? place),
    },
    choice,
  );
  const question = questionFor(finished, {
    headerKey,
    preview: previewOf(head),
    channels: table.channels,
    // The channels of a long text are names in its rows, and not columns.
    others: kind === 'long' ? [] : otherColumns(head, time, table),
    needsRate: time.kind === 'rate' && time.from === 'assumed',
    alwaysAsk: input.options.alwaysAsk === true,
  });
  return { capture: finished.capture, question };
}

function timePlanWarnings(head: TextHead, time: TimePlan): CaptureWarning[] {
  const say = (id: CaptureWarning['id'], detail: string): CaptureWarning[] => [
    { id, detail, row: null, count: 1, repaired: false },
  ];
  if (time.kind === 'rate' && time.from === 'assumed') {
    const still = head.columns.find(isNamedTime);
    const what =
      still === undefined ? 'The file has no times' : `“${shownText(still.name, 60)}” tells no row from another`;
    return say(
      'noTime',
      `${what}; ${time.rateHz} rows a second were assumed, so all durations and frequencies may be wrong.`,
    );
  }
  if (time.kind === 'rate' && time.from === 'file') {
    return say('noTime', `The file has no times; its heading says ${time.rateHz} rows a second.`);
  }
  const share = sharedMinutes(head, time);
  if (share > 1) {
    return say(
      'timeGuessed',
      `Times were read as minutes and seconds, though about ${share} rows share each; if they are hours and minutes, all durations and frequencies are wrong.`,
    );
  }
  if (time.kind === 'number' && time.guess !== null) {
    return say('timeGuessed', `“${head.columns[time.column]?.name ?? ''}” was read as ${time.words}: ${time.guess}.`);
  }
  return [];
}

/** Rows that share a time like "10:02" on average, where they are so many that it may be one of hours and minutes; else 0. */
function sharedMinutes(head: TextHead, time: TimePlan): number {
  if (time.kind !== 'text' || time.form.id !== 'minutesSeconds') return 0;
  const cells = (head.columns[time.column]?.sample.cells ?? []).filter((cell) => cell !== '');
  const share = cells.length / Math.max(1, new Set(cells).size);
  return share >= 10 && cells.every((cell) => /^\d+:\d+$/.test(cell.trim())) ? Math.round(share) : 0;
}

/** Header first, then the first rows. */
function previewOf(head: TextHead): string[][] {
  const rows = head.found.rows.slice(head.header.dataRow, head.header.dataRow + 11).map((row) => [...row]);
  return [head.columns.map(({ heading }) => heading), ...rows];
}

function otherColumns(head: TextHead, time: TimePlan, table: TableRead): ColumnGuess[] {
  const channels = new Set(table.channels.map(({ index }) => index));
  return head.columns
    .filter(({ index }) => !channels.has(index))
    .map((column) => {
      const isTime =
        (time.kind === 'text' && column.index === time.fraction) ||
        column.index === timeColumnOf(time) ||
        (time.kind === 'dateAndClock' && column.index === time.dateColumn);
      return {
        index: column.index,
        name: column.name,
        heading: column.heading,
        unit: column.unit,
        role: isTime ? ('time' as const) : ('ignore' as const),
        bank: null,
        sensor: null,
        certain: true,
        because: isTime ? `holds ${time.words}` : 'holds no numbers that are needed',
        min: null,
        max: null,
      };
    });
}
