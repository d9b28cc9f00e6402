// ASAM MDF 4. Its blocks refer to each other across the file, so the file is gathered whole before it is read.

import type { CaptureWarning } from '../../capture/warnings.ts';
import { finishCapture } from '../finishCapture.ts';
import { BlockFault } from '../mdf4/blocks.ts';
import { looksLikeMdf } from '../mdf4/identification.ts';
import { type MdfContents, readMdf4 } from '../mdf4/readMdf4.ts';
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
import { timeBaseOf } from '../time/timeBaseOf.ts';
import type { Layout, LayoutInput } from './layout.ts';

/** Files and what is compressed in them may take this much memory; above it, the person is told before it hurts. */
const MOST_BYTES = 1_500_000_000;
const EPOCH = { kind: 'number', column: 0, times: 1, over: 1, epoch: true, words: '', guess: null } as const;

export const mdf4: Layout = {
  id: 'mdf4',
  words: 'ASAM MDF 4 measurement file',
  sniff: (head) => (looksLikeMdf(head.bytes) ? 1 : 0),
  read: readFile,
};

async function readFile(input: LayoutInput): Promise<Outcome<ReadCapture>> {
  const { name } = input.head;
  const mostBytes = mostOf(input);
  const gathered = await gather(input, mostBytes);
  if (!gathered.ok) return gathered;
  let contents: MdfContents;
  try {
    contents = readMdf4(gathered.value, {
      inflateBytes: mostBytes,
      decodeUtf8: (bytes) => decodeText(bytes, 0, bytes.length, 'utf8'),
    });
  } catch (cause) {
    if (!(cause instanceof BlockFault)) throw cause;
    return refused(REFUSALS.unreadable(name, `byte ${cause.byte}`, cause.what));
  }
  if (contents.channels.length === 0) return refused(REFUSALS.noChannels(name));
  return finish(input, contents, gathered.value.length);
}

/** While it is gathered a file lies in memory twice, and afterwards beside its values. */
function mostOf({ options }: LayoutInput): number {
  return Math.min(MOST_BYTES, (options.memoryBytes ?? Number.POSITIVE_INFINITY) / 2);
}

async function gather(input: LayoutInput, mostBytes: number): Promise<Outcome<Uint8Array>> {
  const { name } = input.head;
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of input.chunks) {
    length += chunk.length;
    if (length > mostBytes) return refused(REFUSALS.tooLarge(name, 2 * (input.bytesTotal ?? length), 2 * mostBytes));
    pieces.push(chunk.slice());
    if (!input.goesOn(0)) return refused(REFUSALS.cancelled(name));
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return { ok: true, value: whole };
}

function finish(input: LayoutInput, contents: MdfContents, bytes: number): Outcome<ReadCapture> {
  const { name } = input.head;
  const headerKey = headerKeyOf(contents.channels.map((channel) => channel.name));
  const { choice } = input.options;
  const asWritten = asWrittenOf(choice, headerKey);
  const mended = new Map<Float64Array, OwnTimes>();
  // Channels of one group share one array of times, and so are mended once and share one base.
  for (const { timesS } of contents.channels) {
    if (!mended.has(timesS)) mended.set(timesS, ownTimes(timesS, asWritten));
  }
  let zeroS = Number.POSITIVE_INFINITY;
  for (const { timesS } of mended.values()) zeroS = Math.min(zeroS, timesS[0] ?? zeroS);
  const bases = new Map<OwnTimes, RawChannel['time']>();
  const channels = contents.channels.flatMap((channel, index): RawChannel[] => {
    const own = mended.get(channel.timesS);
    if (!own) return [];
    const time = bases.get(own) ?? timeBaseOf(own.timesS, zeroS);
    bases.set(own, time);
    const values = own.arrange(channel.values);
    return [{ index, name: channel.name, unit: channel.unit || null, time, values, decimals: -1 }];
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
    timeDoubt: null,
    alwaysAsk: input.options.alwaysAsk === true,
  });
  return { ok: true, value: { capture: finished.capture, question } };
}

function startOf({ start }: MdfContents, zeroS: number): string | null {
  if (start === null) return null;
  const seconds = Number(start.nanoseconds / 1000n) / 1e6 + zeroS;
  if (start.local) return startClockOf(EPOCH, seconds, '')?.replace(/Z$/, '') ?? null;
  return startClockOf(EPOCH, seconds, '');
}

function warningsOf({ remarks, closed }: MdfContents): CaptureWarning[] {
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
  return told;
}
