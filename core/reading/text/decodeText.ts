// Bytes to text without the platform's decoder, which core does not know. Only headers and odd cells come through here;
// numbers are read from the bytes.

import type { Encoding } from './encoding.ts';

/** Letters of Windows-1252 where it differs from Latin-1: 0x80 to 0x9F. The five unused ones stay as they are. */
const UPPER_1252 =
  '\u20AC\u0081\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\u008D\u017D\u008F' +
  '\u0090\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\u009D\u017E\u0178';

const PIECE = 8192;

/** Text of the bytes from `start` up to `end`. Bytes that are no UTF-8 become U+FFFD, one for each. */
export function decodeText(bytes: Uint8Array, start: number, end: number, encoding: Encoding): string {
  const units: number[] = [];
  let text = '';
  const put = (code: number): void => {
    if (code > 0xffff) units.push(0xd800 + ((code - 0x10000) >> 10), 0xdc00 + ((code - 0x10000) & 0x3ff));
    else units.push(code);
    if (units.length < PIECE) return;
    text += String.fromCharCode(...units);
    units.length = 0;
  };
  if (encoding === 'windows1252') for (let i = start; i < end; i++) put(code1252(bytes[i] ?? 0));
  else if (encoding === 'utf8') for (let i = start; i < end; ) i = putUtf8(bytes, i, end, put);
  else for (let i = start; i + 1 < end; i += 2) put(unit16(bytes, i, encoding));
  return text + String.fromCharCode(...units);
}

/** The UTF-16 code unit at `i`. */
export function unit16(bytes: Uint8Array, i: number, encoding: Encoding): number {
  const first = bytes[i] ?? 0;
  const second = bytes[i + 1] ?? 0;
  return encoding === 'utf16be' ? (first << 8) | second : (second << 8) | first;
}

function code1252(byte: number): number {
  return byte >= 0x80 && byte < 0xa0 ? UPPER_1252.charCodeAt(byte - 0x80) : byte;
}

/** Puts the letter at `i` and returns where the next one begins. */
function putUtf8(bytes: Uint8Array, i: number, end: number, put: (code: number) => void): number {
  const lead = bytes[i] ?? 0;
  if (lead < 0x80) {
    put(lead);
    return i + 1;
  }
  const more = lead >= 0xc2 && lead < 0xe0 ? 1 : lead >= 0xe0 && lead < 0xf0 ? 2 : lead >= 0xf0 && lead < 0xf5 ? 3 : 0;
  let code = lead & (0x3f >> more);
  for (let k = 1; k <= more; k++) {
    const next = i + k < end ? (bytes[i + k] ?? 0) : 0;
    if ((next & 0xc0) !== 0x80) {
      put(0xfffd);
      return i + 1;
    }
    code = (code << 6) | (next & 0x3f);
  }
  put(more === 0 || (code >= 0xd800 && code < 0xe000) || code > 0x10ffff ? 0xfffd : code);
  return i + more + 1;
}
