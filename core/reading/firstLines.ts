const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;

/**
 * The first `most` bytes of a text, cut behind the last line end among them, so that no number is halved; all of it
 * where it is shorter, and `most` bytes where no line ends in the last chunk taken. Chunks are not changed.
 */
export async function* firstLines(
  chunks: AsyncIterable<Uint8Array>,
  most: number,
): AsyncGenerator<Uint8Array, void, undefined> {
  let taken = 0;
  for await (const chunk of chunks) {
    const left = most - taken;
    if (chunk.length < left) {
      taken += chunk.length;
      yield chunk;
      continue;
    }
    const end = lineEnd(chunk, left, taken);
    yield chunk.subarray(0, end === 0 ? left : end);
    return;
  }
}

/** The place behind the last line end before `limit`, or 0; `before` bytes of the text lie before the chunk. */
function lineEnd(chunk: Uint8Array, limit: number, before: number): number {
  for (let i = limit - 1; i >= 0; i--) {
    if (chunk[i] !== LINE_FEED && chunk[i] !== CARRIAGE_RETURN) continue;
    // In UTF-16 with the low byte first, which then lies at an even place, a zero behind it belongs to it.
    const end = chunk[i + 1] === 0 && (before + i) % 2 === 0 ? i + 2 : i + 1;
    if (end <= limit) return end;
  }
  return 0;
}
