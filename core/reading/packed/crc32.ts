const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

/**
 * Check sum of gzip and zip (CRC-32, ISO-HDLC), over pieces: start with 0 and hand on what the last piece gave.
 * "123456789" gives CBF43926.
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let crc = ~before;
  for (let i = 0; i < bytes.length; i++) crc = (TABLE[(crc ^ (bytes[i] ?? 0)) & 255] ?? 0) ^ (crc >>> 8);
  return ~crc >>> 0;
}
