// What a test needs to know of a PNG picture without decoding it: that it is one, and its size. From the head of the file
// as the PNG specification (ISO/IEC 15948) lays it down: eight fixed bytes, then the IHDR chunk.

import { readFileSync } from 'node:fs';

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

export interface PngFacts {
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}

/** Throws for anything that is not a PNG picture. */
export function pngFacts(place: string): PngFacts {
  const bytes = readFileSync(place);
  if (!bytes.subarray(0, SIGNATURE.length).equals(SIGNATURE) || bytes.toString('latin1', 12, 16) !== 'IHDR') {
    throw new Error(`${place} is not a PNG picture`);
  }
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20), bytes: bytes.length };
}
