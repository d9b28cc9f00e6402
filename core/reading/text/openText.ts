import type { FileHead } from '../layouts/layout.ts';
import { type EncodingFound, findEncoding } from './encoding.ts';
import { readHead } from './readHead.ts';
import type { TextHead } from './textPlan.ts';
import { Utf16ToUtf8 } from './utf16ToUtf8.ts';

/** A file's head seen as text; `head` null where no row of numbers was found in it. */
export interface OpenedText {
  readonly encoding: EncodingFound;
  readonly head: TextHead | null;
  /** Bytes of the head as the row loop reads them. */
  readonly bytes: Uint8Array;
}

/** The text layouts are asked one after the other about the same head; it is looked at once. */
const opened = new WeakMap<FileHead, OpenedText>();

/** The head of a file as text: decoded, its dialect and header found, once for each head. Never throws. */
export function openText(file: FileHead): OpenedText {
  const known = opened.get(file);
  if (known !== undefined) return known;
  const encoding = findEncoding(file.bytes);
  const wide = encoding.encoding === 'utf16le' || encoding.encoding === 'utf16be';
  const bytes = wide
    ? new Utf16ToUtf8(wideOf(encoding)).next(file.bytes.subarray(encoding.mark))
    : withoutZerosBehind(file.bytes);
  const own: EncodingFound = wide ? { encoding: 'utf8', mark: 0, guessed: false } : encoding;
  const text: OpenedText = {
    encoding,
    head: isBinary(bytes) ? null : readHead(file.name, bytes, file.whole, own),
    bytes,
  };
  opened.set(file, text);
  return text;
}

/** Chunks as the row loop reads them: UTF-16 made UTF-8, everything else as it is. */
export async function* textChunks(
  chunks: AsyncIterable<Uint8Array>,
  encoding: EncodingFound,
): AsyncGenerator<Uint8Array, void, undefined> {
  if (encoding.encoding !== 'utf16le' && encoding.encoding !== 'utf16be') {
    yield* chunks;
    return;
  }
  const decoder = new Utf16ToUtf8(wideOf(encoding));
  let skip = encoding.mark;
  for await (const chunk of chunks) {
    const from = Math.min(skip, chunk.length);
    skip -= from;
    yield decoder.next(chunk.subarray(from));
  }
  if (decoder.left > 0) yield Uint8Array.of(0xef, 0xbf, 0xbd);
}

function wideOf({ encoding }: EncodingFound): 'utf16le' | 'utf16be' {
  return encoding === 'utf16be' ? 'utf16be' : 'utf16le';
}

/** Instruments set aside room for a recording, and leave zeros in what they had not filled when power failed. */
function withoutZerosBehind(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end--;
  return bytes.subarray(0, end);
}

/** Control characters that no text holds. A few stray zeros are forgiven: instruments pad with them when power fails. */
function isBinary(bytes: Uint8Array): boolean {
  const length = Math.min(bytes.length, 8192);
  let control = 0;
  for (let i = 0; i < length; i++) {
    const c = bytes[i] ?? 0;
    if (c < 9 || (c > 13 && c < 32 && c !== 26 && c !== 27)) control++;
  }
  return control > 8 && control > length * 0.02;
}
