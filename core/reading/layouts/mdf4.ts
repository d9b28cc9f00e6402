// ASAM MDF 4. Its blocks refer to each other across the file, so the file is gathered whole before it is read.

import type { TimeBase } from '../../capture/timeBase.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import { finishCapture } from '../finishCapture.ts';
import { BlockFault } from '../mdf4/blocks.ts';
import { looksLikeMdf, versionBelow4 } from '../mdf4/identification.ts';
import type { MdfTimes } from '../mdf4/masterTimes.ts';
import { type MdfContents, readMdf4 } from '../mdf4/readMdf4.ts';
import { RoomFault } from '../mdf4/recordFields.ts';
import type { Outcome } from '../problem.ts';
import { questionFor } from '../questionFor.ts';
import type { RawChannel } from '../rawChannel.ts';
import type { ReadCapture } from '../readCapture.ts';
import { REFUSALS, refused } from '../refusals.ts';
import { decodeText } from '../text/decodeText.ts';
import { headerKeyOf } from '../text/headerKey.ts';
import { asWrittenOf } from '../time/asWritten.ts';
import { type OwnTimes, ownTimes } from '../time/ownTimes.ts';
import { startClockOf } from '../time/startClockOf.ts';
import { roundTime, timeBaseOf } from '../time/timeBaseOf.ts';
import type { Layout, LayoutInput } from './layout.ts';

/** A file may take this much memory, and this much with what is compressed in it and its values. */
const MOST_FILE_BYTES = 1_500_000_000;
const MOST_BYTES = 3_000_000_000;
const EPOCH = { kind: 'number', column: 0, times: 1, over: 1, epoch: true, words: '', guess: null } as const;

export const mdf4: Layout = {
  id: 'mdf4',
  words: 'ASAM MDF 4 measurement file',
  sniff: (head) => (looksLikeMdf(head.bytes) ? 1 : 0),
  read: readFile,
};

async function readFile(input: LayoutInput): Promise<Outcome<ReadCapture>> {
  const { name } = input.head;
  const old = versionBelow4(input.head.bytes);
  if (old !== null) return refused(REFUSALS.oldMeasurement(name, old));
  const mostBytes = mostOf(input);
  const gathered = await gather(input, Math.min(MOST_FILE_BYTES, mostBytes));
  if (!gathered.ok) return gathered;
  let contents: MdfContents;
  try {
    contents = await readMdf4(gathered.value, {
      roomBytes: mostBytes - gathered.value.length,
      decodeUtf8: (bytes) => decodeText(bytes, 0, bytes.length, 'utf8'),
      async breathe() {
        await input.options.pause?.();
        if (!input.goesOn(0)) throw new Stopped();
      },
    });
  } catch (cause) {
    if (cause instanceof Stopped) return refused(REFUSALS.cancelled(name));
    if (cause instanceof RoomFault) return refused(REFUSALS.tooLarge(name, mostBytes + cause.bytesMissing, mostBytes));
    if (!(cause instanceof BlockFault)) throw cause;
    return refused(REFUSALS.unreadable(name, `byte ${cause.byte}`, cause.what));
  }
  if (contents.channels.length === 0) return refused(REFUSALS.noChannels(name));
  return finish(input, contents, gathered.value.length);
}

/** Thrown between two pieces of work by the one that asks whether to go on, and caught here. */
class Stopped extends Error {}

/** A file lies in memory beside its values. */
function mostOf({ options }: LayoutInput): number {
  return Math.min(MOST_BYTES, options.memoryBytes ?? Number.POSITIVE_INFINITY);
}

async function gather(input: LayoutInput, mostBytes: number): Promise<Outcome<Uint8Array>> {
  const { name } = input.head;
  let whole = new Uint8Array(Math.min(input.bytesTotal ?? 0, mostBytes));
  let length = 0;
  for await (const chunk of input.chunks) {
    const end = length + chunk.length;
    if (end > mostBytes) return refused(REFUSALS.tooLarge(name, input.bytesTotal ?? end, mostBytes));
    if (end > whole.length) whole = larger(whole, end);
    whole.set(chunk, length);
    length = end;
    if (!input.goesOn(0)) return refused(REFUSALS.cancelled(name));
  }
  return { ok: true, value: whole.subarray(0, length) };
}

/** Where nobody knew how long the file is: it was packed, or it grows. */
function larger(bytes: Uint8Array, least: number): Uint8Array<ArrayBuffer> {
  const room = new Uint8Array(Math.max(least, Math.ceil(bytes.length * 1.6)));
  room.set(bytes);
  return room;
}

function finish(input: LayoutInput, contents: MdfContents, bytes: number): Outcome<ReadCapture> {
  const { name } = input.head;
  const headerKey = headerKeyOf(contents.channels.map((channel) => channel.name));
  const { choice } = input.options;
  const asWritten = asWrittenOf(choice, headerKey);
  const mended = new Map<MdfTimes, OwnTimes>();
  // Channels of one group share their times, and so are mended once and share one base. Counted times need no mending.
  let zeroS = Number.POSITIVE_INFINITY;
  for (const { times } of contents.channels) {
    if (times.kind === 'listed' && !mended.has(times)) mended.set(times, ownTimes(times.timesS, asWritten));
    zeroS = Math.min(zeroS, startOfTimes(times, mended.get(times)) ?? zeroS);
  }
  const bases = new Map<MdfTimes, RawChannel['time']>();
  const channels = contents.channels.map(({ name, unit, times, values, range, blocks }, index): RawChannel => {
    const own = mended.get(times);
    const time = bases.get(times) ?? baseOf(times, own, zeroS);
    bases.set(times, time);
    const read = { index, name, unit: unit || null, time, decimals: -1 };
    const arranged = own?.arrange(values) ?? values;
    return arranged === values ? { ...read, values, range, blocks } : { ...read, values: arranged };
  });
  const finished = finishCapture(
    {
      name,
      bytes,
      rows: contents.records,
      startClock: startOf(contents, zeroS),
      channels,
      warnings: [...warningsOf(contents), ...[...mended.values()].flatMap((own) => own.warnings)],
      layout: { id: mdf4.id, words: `${mdf4.words}, ${contents.channels.length} channels`, headerKey },
      rowOf: () => null,
    },
    choice?.headerKey === headerKey ? choice : null,
  );
  const preview = [contents.channels.map((channel) => channel.name)];
  const question = questionFor(finished, {
    headerKey,
    preview,
    channels,
    others: [],
    needsRate: false,
    alwaysAsk: input.options.alwaysAsk === true,
  });
  return { ok: true, value: { capture: finished.capture, question } };
}

function startOfTimes(times: MdfTimes, own: OwnTimes | undefined): number | undefined {
  return times.kind === 'counted' ? times.startS : own?.timesS[0];
}

function baseOf(times: MdfTimes, own: OwnTimes | undefined, zeroS: number): TimeBase {
  if (times.kind === 'listed') return timeBaseOf(own?.timesS ?? times.timesS, zeroS);
  const { startS, stepS, length } = times;
  return { kind: 'regular', startS: roundTime(startS - zeroS), stepS, length };
}

function startOf({ start }: MdfContents, zeroS: number): string | null {
  if (start === null) return null;
  const seconds = Number(start.nanoseconds / 1000n) / 1e6 + zeroS;
  if (start.local) return startClockOf(EPOCH, seconds, '')?.replace(/Z$/, '') ?? null;
  return startClockOf(EPOCH, seconds, '');
}

function warningsOf({ remarks, closed, cut }: MdfContents): CaptureWarning[] {
  const told: CaptureWarning[] = remarks.map((detail) => ({
    id: 'other',
    detail,
    row: null,
    count: 1,
    repaired: false,
  }));
  if (!closed) {
    const detail = 'The file was not closed by the program that wrote it; its end may be missing.';
    told.unshift({ id: 'unfinished', detail, row: null, count: 1, repaired: false });
  }
  if (cut) {
    const detail = 'The file ends before its data do: it may have been cut off on the way. What is there was read.';
    told.unshift({ id: 'truncated', detail, row: null, count: 1, repaired: false });
  }
  return told;
}
