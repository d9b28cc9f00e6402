// Memory for columns that threads may share: a capture whose columns lie in it is handed to another thread without being
// copied. A web page that may not share memory gets plain memory.

const shares = typeof SharedArrayBuffer === 'function';

/** Room for `length` numbers of 4 bytes, all 0. */
export function narrowRoom(length: number): Float32Array {
  return new Float32Array(bytesFor(4 * length));
}

/** Room for `length` numbers of 8 bytes, all 0. */
export function wideRoom(length: number): Float64Array {
  return new Float64Array(bytesFor(8 * length));
}

function bytesFor(bytes: number): ArrayBufferLike {
  return shares ? new SharedArrayBuffer(bytes) : new ArrayBuffer(bytes);
}

/** The same numbers in memory that threads may share: as they are where they lie there already, else a copy. */
export function inSharedRoom(values: Float32Array | Float64Array): Float32Array | Float64Array {
  if (values instanceof Float64Array) return wideInSharedRoom(values);
  if (isShared(values)) return values;
  const copy = narrowRoom(values.length);
  copy.set(values);
  return copy;
}

/** As inSharedRoom, for numbers of 8 bytes. */
export function wideInSharedRoom(values: Float64Array): Float64Array {
  if (isShared(values)) return values;
  const copy = wideRoom(values.length);
  copy.set(values);
  return copy;
}

function isShared({ buffer }: Float32Array | Float64Array): boolean {
  return !shares || buffer instanceof SharedArrayBuffer;
}
