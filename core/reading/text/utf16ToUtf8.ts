import { unit16 } from './decodeText.ts';
import type { Encoding } from './encoding.ts';

/**
 * UTF-16 in pieces of any size to UTF-8, so that one row loop serves all texts. Halves of letters that miss their other
 * half become U+FFFD. Keeps at most three bytes back between pieces.
 */
export class Utf16ToUtf8 {
  private readonly encoding: Encoding;
  private held = new Uint8Array(0);

  constructor(encoding: 'utf16le' | 'utf16be') {
    this.encoding = encoding;
  }

  /** Bytes kept back; an odd one at the end of a file is half a letter. */
  get left(): number {
    return this.held.length;
  }

  next(piece: Uint8Array): Uint8Array {
    const input = this.held.length === 0 ? piece : together(this.held, piece);
    const output = new Uint8Array(Math.ceil(input.length / 2) * 3 + 3);
    let pos = 0;
    let at = 0;
    for (; pos + 1 < input.length; pos += 2) {
      let code = unit16(input, pos, this.encoding);
      if (code >= 0xd800 && code < 0xdc00) {
        if (pos + 3 >= input.length) break;
        const low = unit16(input, pos + 2, this.encoding);
        if (low >= 0xdc00 && low < 0xe000) {
          code = 0x10000 + ((code - 0xd800) << 10) + (low - 0xdc00);
          pos += 2;
        } else code = 0xfffd;
      } else if (code >= 0xdc00 && code < 0xe000) code = 0xfffd;
      at = putUtf8(output, at, code);
    }
    this.held = input.slice(pos);
    return output.subarray(0, at);
  }
}

function together(first: Uint8Array, second: Uint8Array): Uint8Array {
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}

function putUtf8(bytes: Uint8Array, at: number, code: number): number {
  if (code < 0x80) {
    bytes[at] = code;
    return at + 1;
  }
  if (code < 0x800) {
    bytes[at] = 0xc0 | (code >> 6);
    bytes[at + 1] = 0x80 | (code & 0x3f);
    return at + 2;
  }
  if (code < 0x10000) {
    bytes[at] = 0xe0 | (code >> 12);
    bytes[at + 1] = 0x80 | ((code >> 6) & 0x3f);
    bytes[at + 2] = 0x80 | (code & 0x3f);
    return at + 3;
  }
  bytes[at] = 0xf0 | (code >> 18);
  bytes[at + 1] = 0x80 | ((code >> 12) & 0x3f);
  bytes[at + 2] = 0x80 | ((code >> 6) & 0x3f);
  bytes[at + 3] = 0x80 | (code & 0x3f);
  return at + 4;
}
