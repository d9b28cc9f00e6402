/** The first bytes of a stream, and the stream from its first byte on. */
export interface Peeked {
  readonly bytes: Uint8Array;
  /** Whether the stream holds no more than `bytes`. */
  readonly whole: boolean;
  /** Everything, the peeked bytes first. Can be walked once. */
  all(): AsyncGenerator<Uint8Array, void, undefined>;
}

/** Reads until `least` bytes are there or the stream ends. */
export async function peekBytes(stream: AsyncIterable<Uint8Array>, least: number): Promise<Peeked> {
  const iterator = stream[Symbol.asyncIterator]();
  const chunks: Uint8Array[] = [];
  let length = 0;
  let whole = false;
  while (length < least) {
    keepLast(chunks);
    const next = await iterator.next();
    if (next.done === true) {
      whole = true;
      break;
    }
    chunks.push(next.value);
    length += next.value.length;
  }
  async function* all(): AsyncGenerator<Uint8Array, void, undefined> {
    try {
      for (let chunk = chunks.shift(); chunk !== undefined; chunk = chunks.shift()) yield chunk;
      while (!whole) {
        const next = await iterator.next();
        if (next.done === true) return;
        yield next.value;
      }
    } finally {
      await iterator.return?.();
    }
  }
  return { bytes: firstBytes(chunks, Math.min(length, least)), whole: whole || length < least, all };
}

/** Copies the last chunk: the next one may come in its place. */
function keepLast(chunks: Uint8Array[]): void {
  const last = chunks.pop();
  if (last !== undefined) chunks.push(new Uint8Array(last));
}

function firstBytes(chunks: readonly Uint8Array[], length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    if (at >= length) break;
    const part = chunk.subarray(0, length - at);
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
