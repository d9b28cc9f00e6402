import type { Peeked } from '../peekBytes.ts';
import { gunzipChunks } from './gunzipChunks.ts';
import { newReport, type UnpackReport } from './unpackReport.ts';
import { unzipChunks } from './unzipChunks.ts';

export type Packing = 'gzip' | 'zip';

/** How a file is packed, by its first bytes; null where it is not. */
export function packingOf(bytes: Uint8Array): Packing | null {
  if (bytes[0] === 0x1f && bytes[1] === 0x8b && bytes[2] === 8) return 'gzip';
  const zip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  return zip && ((bytes[2] === 3 && bytes[3] === 4) || (bytes[2] === 5 && bytes[3] === 6)) ? 'zip' : null;
}

/** The bytes inside a packed file. Only one layer is taken off; see readCapture. */
export function unpack(
  packing: Packing,
  name: string,
  packed: Peeked,
): { readonly chunks: AsyncGenerator<Uint8Array, void, undefined>; readonly report: UnpackReport } {
  const report = newReport();
  const open = packing === 'gzip' ? gunzipChunks : unzipChunks;
  return { chunks: open(name, packed.all(), report), report };
}
