// Logs of the diagnostic connector in the Linux SocketCAN text form: answers are decoded, other traffic is counted.

import type { CaptureWarning, WarningId } from '../../capture/warnings.ts';
import type { ColumnChoice } from '../../record/schema.ts';
import { finishCapture } from '../finishCapture.ts';
import type { Outcome } from '../problem.ts';
import type { RawChannel } from '../rawChannel.ts';
import type { ReadCapture } from '../readCapture.ts';
import { REFUSALS, refused } from '../refusals.ts';
import { AnswerCollector, type AnswerColumn } from '../socketcan/answers.ts';
import { logLine } from '../socketcan/logLine.ts';
import { decodeText } from '../text/decodeText.ts';
import { headerKeyOf } from '../text/headerKey.ts';
import { overBudget } from '../text/scanText.ts';
import { asWrittenOf } from '../time/asWritten.ts';
import { FIRST_MOMENT_S } from '../time/numberTime.ts';
import { type OwnTimes, ownTimes } from '../time/ownTimes.ts';
import { startClockOf } from '../time/startClockOf.ts';
import { timeBaseOf } from '../time/timeBaseOf.ts';
import type { Layout, LayoutInput } from './layout.ts';

const LINES_TO_SNIFF = 20;
/** A longer line is no frame; what follows up to the next line end is passed over without being kept. */
const LONGEST_LINE = 400;
/** A frame gives at most a time and a value to keep, eight bytes each. */
const FRAME_BYTES = 16;

export const socketcan: Layout = {
  id: 'socketcan',
  words: 'Log of the diagnostic connector, SocketCAN text form',
  sniff(head) {
    const text = decodeText(head.bytes, 0, Math.min(head.bytes.length, LINES_TO_SNIFF * LONGEST_LINE), 'utf8');
    const lines = text.split(/\r?\n/, LINES_TO_SNIFF + 1).filter((line) => line.trim() !== '');
    // The last line may be cut off by the end of the head.
    const whole = lines.length > 1 ? lines.slice(0, -1) : lines;
    const frames = whole.filter((line) => logLine(line) !== null).length;
    return frames > 0 && frames * 2 >= whole.length ? 0.95 : 0;
  },
  read: readLog,
};

/** Lines counted while a log is read. */
interface Lines {
  frames: number;
  strange: number;
  firstStrange: number | null;
  bytes: number;
  /** Row of the last line where it has no line end, else 0. */
  openEnd: number;
}

async function readLog(input: LayoutInput): Promise<Outcome<ReadCapture>> {
  const { name } = input.head;
  const collector = new AnswerCollector();
  const lines: Lines = { frames: 0, strange: 0, firstStrange: null, bytes: 0, openEnd: 0 };
  let row = 0;
  let open = '';
  const take = (line: string) => {
    row++;
    if (line.trim() === '') return;
    const frame = line.length <= LONGEST_LINE ? logLine(line) : null;
    if (frame) {
      lines.frames++;
      collector.take(frame);
      return;
    }
    lines.strange++;
    lines.firstStrange ??= row;
  };
  for await (const chunk of input.chunks) {
    lines.bytes += chunk.length;
    const parts = (open + decodeText(chunk, 0, chunk.length, 'windows1252')).split('\n');
    open = (parts.pop() ?? '').slice(0, LONGEST_LINE + 1);
    for (const line of parts) take(line.endsWith('\r') ? line.slice(0, -1) : line);
    const problem = overBudget(input, FRAME_BYTES * lines.frames, lines.bytes);
    if (problem !== null) return refused(problem);
    if (!input.goesOn(lines.frames)) return refused(REFUSALS.cancelled(name));
  }
  if (open !== '') {
    take(open);
    lines.openEnd = row;
  }
  return finish(input, collector, lines);
}

function finish(input: LayoutInput, collector: AnswerCollector, lines: Lines): Outcome<ReadCapture> {
  const { name } = input.head;
  const { columns, reported } = collector.finished();
  if (columns.length === 0) return refused(nothingDecoded(name, lines.frames));
  const bus = mainBus(columns);
  const headerKey = headerKeyOf(columns.map((column) => `${senderOf(column, bus)} ${column.of.key}`));
  const chosen = input.options.choice?.headerKey === headerKey ? input.options.choice : null;
  const asWritten = asWrittenOf(chosen, headerKey);
  const own = columns.map(({ timesS }) => ownTimes(timesS, asWritten));
  const zeroS = own.reduce((least, { timesS }) => Math.min(least, timesS[0] ?? least), Number.POSITIVE_INFINITY);
  // A choice without columns is about the times alone.
  const choice = chosen !== null && chosen.columns.length > 0 ? chosen : rolesByStandard(columns, bus, headerKey);
  const finished = finishCapture(
    {
      name,
      bytes: lines.bytes,
      rows: lines.frames,
      // Some logs count from their own start.
      startClock: zeroS < FIRST_MOMENT_S ? null : startClockOf(EPOCH, zeroS, ''),
      channels: columns.flatMap((column, index) => {
        const times = own[index];
        return times === undefined ? [] : [rawChannel(column, bus, index, times, zeroS)];
      }),
      warnings: [...warningsOf(collector, lines), ...once(own.flatMap(({ warnings }) => warnings))],
      layout: { id: socketcan.id, words: `${socketcan.words}, ${lines.frames} frames`, headerKey },
      rowOf: () => null,
    },
    choice,
  );
  return { ok: true, value: { capture: { ...finished.capture, reported }, question: null } };
}

/** Log times count from 1970. */
const EPOCH = { kind: 'number', column: 0, times: 1, over: 1, epoch: true, words: '', guess: null } as const;

function rawChannel(column: AnswerColumn, bus: string, index: number, own: OwnTimes, zeroS: number): RawChannel {
  const { of, values } = column;
  const name = isMain(column, bus) ? of.name : `${of.name} (unit ${senderOf(column, bus)})`;
  return { index, name, unit: of.unit, time: timeBaseOf(own.timesS, zeroS), values: own.arrange(values), decimals: -1 };
}

/** The interface with most values: a log may hold several, and the same unit numbers on each. */
function mainBus(columns: readonly AnswerColumn[]): string {
  const counts = new Map<string, number>();
  for (const { bus, values } of columns) counts.set(bus, (counts.get(bus) ?? 0) + values.length);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? '';
}

function senderOf({ bus, sender }: AnswerColumn, main: string): string {
  return bus === main ? sender : `${sender} on ${bus}`;
}

/** 7E8 and, with 29 bits, unit 10 are the engine's control unit (ISO 15765-4); others repeat some of its values. */
function isMain({ bus, sender }: AnswerColumn, main: string): boolean {
  return bus === main && (sender === '7E8' || sender === '18DAF110');
}

/** The same sentence about several channels, told once. */
function once(warnings: readonly CaptureWarning[]): CaptureWarning[] {
  return warnings.filter(({ detail }, i) => warnings.findIndex((one) => one.detail === detail) === i);
}

/** The standard says what each value is, so nothing has to be guessed. The first unit to answer keeps the role. */
function rolesByStandard(columns: readonly AnswerColumn[], bus: string, headerKey: string): ColumnChoice {
  const ordered = columns.map((column, index) => ({ column, index }));
  ordered.sort((a, b) => rank(b.column, bus) - rank(a.column, bus));
  const taken = new Set<string>();
  const chosen = ordered.map(({ column: { of }, index }) => {
    const place = `${of.role} ${of.bank} ${of.sensor}`;
    const role = of.role === 'other' || taken.has(place) ? 'other' : of.role;
    taken.add(place);
    return { index, role, bank: role === 'other' ? null : of.bank, sensor: of.sensor, unit: of.unit };
  });
  return { headerKey, timeColumn: null, rateHz: null, columns: chosen };
}

function rank(column: AnswerColumn, bus: string): number {
  return isMain(column, bus) ? 2 : column.bus === bus ? 1 : 0;
}

const LAST_LINE_OPEN =
  'The last line has no line end; if the file was cut off there, its last message may be incomplete.';

function warningsOf(collector: AnswerCollector, lines: Lines): CaptureWarning[] {
  const { otherTraffic, refusals, dropped, unknownItems } = collector.passedOver;
  const { strange, firstStrange, openEnd } = lines;
  const as = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
  const skipped = `${as(strange, 'line is no frame and was', 'lines are no frames and were')} skipped.`;
  const lost = `${as(dropped, 'message lost a part and was', 'messages lost a part and were')} dropped.`;
  const refusal = `${as(refusals, 'question was', 'questions were')} refused by a control unit.`;
  const unknown = `${as(unknownItems, 'answer holds', 'answers hold')} a data item that is not known or is cut short.`;
  const traffic = `${as(otherTraffic, 'frame is other traffic of the bus and was', 'frames are other traffic of the bus and were')} passed over.`;
  const told: [number, WarningId, string, number | null][] = [
    [strange, 'rowsSkipped', skipped, firstStrange],
    [Math.min(1, openEnd), 'unfinished', LAST_LINE_OPEN, openEnd],
    [dropped, 'droppedMessages', lost, null],
    [refusals, 'other', refusal, null],
    [unknownItems, 'other', unknown, null],
    [otherTraffic, 'other', traffic, null],
  ];
  return told
    .filter(([count]) => count > 0)
    .map(([count, id, detail, row]) => ({ id, detail, row, count, repaired: false }));
}

function nothingDecoded(name: string, frames: number) {
  return {
    id: 'noAnswers',
    what: `None of the ${frames} frames in this log is an answer of the diagnostic connector that holds a value.`,
    where: name,
    doNext: 'Record while an instrument asks for the engine data, and open that log.',
  };
}
