import type { ByteSource } from '../../core/reading/readCapture.ts';

/** Bytes in memory as a source, handed over in chunks of `chunkBytes`. */
export function bytesSource(name: string, bytes: Uint8Array | string, chunkBytes = 65_536): ByteSource {
  const whole = typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes;
  return {
    name,
    bytes: whole.length,
    rereadable: true,
    async *chunks() {
      for (let at = 0; at < whole.length; at += chunkBytes) yield whole.subarray(at, at + chunkBytes);
    },
  };
}
