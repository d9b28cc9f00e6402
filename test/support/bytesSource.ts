import type { ByteSource } from '../../core/reading/readCapture.ts';

/** What lies in the place of a chunk once the reader should be done with it: a digit, which would be read as one. */
const SPENT = '7'.charCodeAt(0);

/**
 * Bytes in memory as a source, handed over in chunks of `chunkBytes`, each in the place of the one before, as files are
 * read: what a reader keeps of a chunk beyond its turn is spoilt.
 */
export function bytesSource(name: string, bytes: Uint8Array | string, chunkBytes = 65_536): ByteSource {
  const whole = typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes;
  return {
    name,
    bytes: whole.length,
    rereadable: true,
    async *chunks() {
      const place = new Uint8Array(Math.min(chunkBytes, whole.length));
      for (let at = 0; at < whole.length; at += chunkBytes) {
        const chunk = place.subarray(0, Math.min(chunkBytes, whole.length - at));
        chunk.set(whole.subarray(at, at + chunk.length));
        yield chunk;
        chunk.fill(SPENT);
      }
    },
  };
}
