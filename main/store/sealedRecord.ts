// How a record lies on disk: a JSON document that carries the SHA-256 of what it holds, so that a flipped byte, a cut or
// a hole is noticed. Every byte of the file counts: the frame is compared literally, the rest is hashed.

import { createHash } from 'node:crypto';

const HEAD = '{"tailtrace":"vehicle record","sha256":"';
const NECK = '","saved":\n';
const FOOT = '\n}\n';
const HASH_DIGITS = 64;

/** Larger than any record the program can make; a larger file is not one. */
const MOST_BYTES = 256 * 1024 * 1024;

export interface SealedContent {
  /** RFC 3339 time of the save. */
  readonly savedAt: string;
  /** The record as it was written; of whatever version. */
  readonly record: unknown;
}

export function sha256Of(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** The bytes to write. */
export function seal(savedAt: string, record: unknown): Uint8Array {
  const saved = JSON.stringify({ savedAt, record });
  return Buffer.from(`${HEAD}${sha256Of(saved)}${NECK}${saved}${FOOT}`, 'utf8');
}

/** What was sealed, or null where a single byte is not as it was written. Never throws. */
export function unseal(bytes: Uint8Array): SealedContent | null {
  if (bytes.byteLength > MOST_BYTES) return null;
  const whole = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = HEAD.length + HASH_DIGITS + NECK.length;
  const end = whole.byteLength - FOOT.length;
  if (end < start) return null;
  const hash = whole.toString('latin1', HEAD.length, HEAD.length + HASH_DIGITS);
  if (whole.toString('latin1', 0, start) !== `${HEAD}${hash}${NECK}`) return null;
  if (whole.toString('latin1', end) !== FOOT) return null;
  const saved = whole.subarray(start, end);
  if (sha256Of(saved) !== hash) return null;
  return readSaved(saved.toString('utf8'));
}

function readSaved(text: string): SealedContent | null {
  try {
    const saved: unknown = JSON.parse(text);
    if (typeof saved !== 'object' || saved === null || !('savedAt' in saved) || !('record' in saved)) return null;
    return typeof saved.savedAt === 'string' ? { savedAt: saved.savedAt, record: saved.record } : null;
  } catch {
    return null;
  }
}
