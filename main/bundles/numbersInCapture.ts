import { vehicleNumbersInText } from '../../core/diagnostics/vehicleNumber.ts';
import { packingOf, unpack } from '../../core/reading/packed/unpack.ts';
import { peekBytes } from '../../core/reading/peekBytes.ts';
import { LoggedNumbers } from '../../core/reading/socketcan/loggedNumbers.ts';

const PIECE = 8 * 1024 * 1024;
/** Longer than a number with what stands around it. */
const OVERLAP = 64;

/**
 * Texts in a capture that look like a vehicle number, each once (T-PRIV-3): in its bytes as they stand, in what is packed in
 * them, and in the answers of control units in a log. Of an archive with several recordings only the one that is read is
 * unpacked. `name` is the file's name.
 */
export async function numbersInCapture(name: string, bytes: Uint8Array): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  await look(pieces(bytes), found);
  const packing = packingOf(bytes);
  if (packing === null) return found;
  // What cannot be unpacked to its end was not read to its end either.
  const { chunks } = unpack(packing, name, await peekBytes(pieces(bytes), 1));
  await look(chunks, found);
  return found;
}

async function* pieces(bytes: Uint8Array): AsyncGenerator<Uint8Array, void, undefined> {
  for (let at = 0; at < bytes.length; at += PIECE) yield bytes.subarray(at, at + PIECE);
}

async function look(chunks: AsyncIterable<Uint8Array>, found: Set<string>): Promise<void> {
  const log = new LoggedNumbers();
  let kept = '';
  for await (const chunk of chunks) {
    const read = Buffer.from(chunk.buffer, chunk.byteOffset, chunk.byteLength).toString('latin1');
    // The second byte of a character in UTF-16 is a NUL for every letter that counts here.
    const text = read.replaceAll('\0', '');
    // A run of letters at the end may go on in the next piece: with one more it is as long as no number.
    for (const number of vehicleNumbersInText(`${kept}${text}0`)) found.add(number);
    kept = `${kept}${text}`.slice(-OVERLAP);
    log.take(text);
  }
  for (const number of [...vehicleNumbersInText(kept), ...log.finished()]) found.add(number);
}
