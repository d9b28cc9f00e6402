// The door for bytes: whatever an instrument wrote goes in, a Capture, a question about columns, or a refusal comes out.

import type { Capture } from '../capture/capture.ts';
import type { Bank, Role } from '../capture/roles.ts';
import type { CaptureWarning } from '../capture/warnings.ts';
import type { ColumnChoice } from '../record/schema.ts';
import { firstLines } from './firstLines.ts';
import { knownOther } from './knownOther.ts';
import { LAYOUTS } from './layouts/index.ts';
import type { FileHead, Layout } from './layouts/layout.ts';
import { packingOf, unpack } from './packed/unpack.ts';
import { unpackWarnings } from './packed/unpackReport.ts';
import { type Peeked, peekBytes } from './peekBytes.ts';
import type { Outcome } from './problem.ts';
import { REFUSALS, refused } from './refusals.ts';
import { whyUnreadable } from './whyUnreadable.ts';

/**
 * Where bytes come from. The reader pulls; it never sees a path. Chunks may be of any size. The reader does not change
 * them, and is done with each when it asks for the next one, whose bytes may lie in the same place.
 */
export interface ByteSource {
  readonly name: string;
  /** Total bytes, or null where unknown (standard input). */
  readonly bytes: number | null;
  /** Yields the bytes in order. Each call starts again from the first byte, where `rereadable` is true. */
  chunks(): AsyncIterable<Uint8Array>;
  readonly rereadable: boolean;
}

export interface ReadOptions {
  /** A person's choice of columns, or null to recognise them. Ignored where its headerKey differs. */
  readonly choice: ColumnChoice | null;
  /** True gives the question about columns even where everything is certain: a person wants to look at them again. */
  readonly alwaysAsk?: boolean;
  /**
   * Bytes of memory that the values may take; a capture that needs more is refused before it hurts. No limit where it is
   * left out.
   */
  readonly memoryBytes?: number;
  /** Reads only the lines that end within so many unpacked bytes; everything where it is left out. */
  readonly mostBytes?: number;
  /** Called from time to time, at least every few hundred kilobytes; must be cheap. */
  onProgress?(progress: ReadProgress): void;
  /** Asked between chunks; true stops reading with the outcome `cancelled`. */
  isCancelled?(): boolean;
  /** Gives way to others, where a layout has long work to do after the bytes have come. */
  pause?(): Promise<void>;
}

export interface ReadProgress {
  readonly bytesRead: number;
  readonly bytesTotal: number | null;
  readonly rows: number;
}

/** A guess about one column, with what it rests on, for the screen that asks. */
export interface ColumnGuess {
  readonly index: number;
  readonly name: string;
  /** The whole heading as the file writes it, unit and all, where it differs from the name. */
  readonly heading?: string;
  readonly unit: string | null;
  readonly role: Role | 'time' | 'ignore';
  readonly bank: Bank;
  readonly sensor: number | null;
  /** Whether the guess is good enough not to be asked about. */
  readonly certain: boolean;
  /** In words: "name says oxygen sensor, values lie between 0.05 and 0.9". */
  readonly because: string;
  readonly min: number | null;
  readonly max: number | null;
}

/** What the person is shown when columns are not certain. */
export interface ColumnQuestion {
  readonly headerKey: string;
  /** The first rows as text, header first; at most 12 rows of at most 64 columns, cells cut at 40 characters. */
  readonly preview: readonly (readonly string[])[];
  readonly guesses: readonly ColumnGuess[];
  /** What is not certain, one sentence. */
  readonly words: string;
  /** True where the file has no time column and a rate must be given. */
  readonly needsRate: boolean;
}

export interface ReadCapture {
  readonly capture: Capture;
  /** Set where some columns were guessed and a person should look; the capture is usable with the guess all the same. */
  readonly question: ColumnQuestion | null;
}

/** So many first bytes are looked at to find out what a file is. */
const HEAD_BYTES = 256 * 1024;

/**
 * Reads one capture. Resolves with the capture, or with a refusal (problem ids include empty, noNumbers, picture,
 * headerOnly, tooManyColumns, unreadable, cancelled). Never rejects for any bytes; rejects only if `source` does.
 */
export async function readCapture(source: ByteSource, options: ReadOptions): Promise<Outcome<ReadCapture>> {
  let bytesRead = 0;
  const counted = countedChunks(source, (bytes) => {
    bytesRead += bytes;
  });
  const outer = await peekBytes(counted, HEAD_BYTES);
  if (outer.bytes.length === 0) return refused(REFUSALS.empty(source.name));
  const goesOn = (rows: number): boolean => {
    options.onProgress?.({ bytesRead, bytesTotal: source.bytes, rows });
    return options.isCancelled?.() !== true;
  };
  if (!goesOn(0)) return refused(REFUSALS.cancelled(source.name));
  const packing = packingOf(outer.bytes);
  if (packing === null) {
    const outcome = await readBytes(source.name, outer, source.bytes, options, goesOn);
    return withBytes(outcome, bytesRead, []);
  }
  const { chunks, report } = unpack(packing, source.name, outer);
  const inner = await peekBytes(chunks, HEAD_BYTES);
  if (report.problem === null && packingOf(inner.bytes) !== null) report.problem = REFUSALS.nested(source.name);
  if (report.problem !== null) return refused(report.problem);
  if (inner.bytes.length === 0) {
    return refused(REFUSALS.unreadable(source.name, '', report.broken ?? 'This packed file is empty.'));
  }
  const outcome = await readBytes(source.name, inner, null, options, goesOn);
  return report.problem === null ? withBytes(outcome, bytesRead, unpackWarnings(report)) : refused(report.problem);
}

/** The outcome with the size of the file as it lies on the disk, and with what was found while unpacking it. */
function withBytes(
  outcome: Outcome<ReadCapture>,
  bytes: number,
  warnings: readonly CaptureWarning[],
): Outcome<ReadCapture> {
  if (!outcome.ok) return outcome;
  const { capture, question } = outcome.value;
  return {
    ok: true,
    value: { capture: { ...capture, bytes, warnings: [...warnings, ...capture.warnings] }, question },
  };
}

/** Reads what is no longer packed; `bytesTotal` is null where the unpacked size is not known. */
async function readBytes(
  name: string,
  peeked: Peeked,
  bytesTotal: number | null,
  options: ReadOptions,
  goesOn: (rows: number) => boolean,
): Promise<Outcome<ReadCapture>> {
  const head: FileHead = { name, bytes: peeked.bytes, whole: peeked.whole };
  const layout = surestLayout(head);
  if (layout === null) return refused(whyUnreadable(head));
  const { mostBytes } = options;
  if (mostBytes === undefined) return layout.read({ head, chunks: peeked.all(), bytesTotal, options, goesOn });
  const chunks = firstLines(peeked.all(), mostBytes);
  return layout.read({ head, chunks, bytesTotal: Math.min(bytesTotal ?? mostBytes, mostBytes), options, goesOn });
}

/** The layout that is surest of a file, the first of equals; null where none fits. */
function surestLayout(head: FileHead): Layout | null {
  if (knownOther(head.name, head.bytes) !== null) return null;
  let surest: Layout | null = null;
  let most = 0;
  for (const layout of LAYOUTS) {
    const sure = layout.sniff(head);
    if (sure > most) {
      most = sure;
      surest = layout;
    }
  }
  return surest;
}

async function* countedChunks(
  source: ByteSource,
  count: (bytes: number) => void,
): AsyncGenerator<Uint8Array, void, undefined> {
  for await (const chunk of source.chunks()) {
    count(chunk.length);
    yield chunk;
  }
}
