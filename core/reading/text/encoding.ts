/** How a file's bytes stand for letters. */
export type Encoding = 'utf8' | 'utf16le' | 'utf16be' | 'windows1252';

export interface EncodingFound {
  readonly encoding: Encoding;
  /** Bytes of the mark at the start, to be skipped. */
  readonly mark: number;
  /** True where neither mark nor pattern settled it: bytes that are no UTF-8 and were taken as Windows-1252. */
  readonly guessed: boolean;
}

/**
 * Encoding of a text from its first bytes: by its mark (EF BB BF, FF FE, FE FF), by the pattern of zeros that UTF-16
 * makes of Western text, else UTF-8 where the bytes are that, else Windows-1252. An empty head is UTF-8.
 */
export function findEncoding(head: Uint8Array): EncodingFound {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return { encoding: 'utf8', mark: 3, guessed: false };
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: 'utf16le', mark: 2, guessed: false };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: 'utf16be', mark: 2, guessed: false };
  const wide = zeroPattern(head);
  if (wide !== null) return { encoding: wide, mark: 0, guessed: false };
  const broken = firstBrokenUtf8(head);
  if (broken >= 0) return { encoding: 'windows1252', mark: 0, guessed: true };
  return { encoding: 'utf8', mark: 0, guessed: false };
}

/** UTF-16 without a mark: nearly every other byte is zero, and none of the rest. */
function zeroPattern(head: Uint8Array): 'utf16le' | 'utf16be' | null {
  const length = Math.min(head.length, 4096);
  if (length < 4) return null;
  const zeros = [0, 0];
  for (let i = 0; i < length; i++) if (head[i] === 0) zeros[i & 1] = (zeros[i & 1] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  const half = length / 2;
  if (odd > half * 0.8 && even < half * 0.05) return 'utf16le';
  if (even > half * 0.8 && odd < half * 0.05) return 'utf16be';
  return null;
}

/**
 * Position of the first byte that is no UTF-8, or -1. A sequence cut off by the end of `bytes` is not broken.
 */
export function firstBrokenUtf8(bytes: Uint8Array): number {
  let i = 0;
  while (i < bytes.length) {
    const lead = bytes[i] ?? 0;
    if (lead < 0x80) {
      i++;
      continue;
    }
    const more =
      lead >= 0xc2 && lead < 0xe0 ? 1 : lead >= 0xe0 && lead < 0xf0 ? 2 : lead >= 0xf0 && lead < 0xf5 ? 3 : 0;
    if (more === 0) return i;
    for (let k = 1; k <= more; k++) {
      if (i + k >= bytes.length) return -1;
      if (((bytes[i + k] ?? 0) & 0xc0) !== 0x80) return i;
    }
    i += more + 1;
  }
  return -1;
}
