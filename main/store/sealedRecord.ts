// How a record lies on disk: a JSON document that carries the SHA-256 of what it holds, so that a flipped byte, a cut or
// a hole is noticed. Every byte of the file counts: the frame is compared literally, the rest is hashed.

import { createHash } from 'node:crypto';
import { parseGuardedJson } from '../../core/record/guardedJson.ts';

const HEAD = '{"tailtrace":"vehicle record","sha256":"';
const NECK = '","saved":\n';
const FOOT = '\n}\n';
const HASH_DIGITS = 64;

/** Larger and deeper than any record the program can make; what is beyond is not one. */
const LIMITS = { characters: 64 * 1024 * 1024, depth: 40 };

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
  const json = parseGuardedJson(text, LIMITS);
  if (!json.ok) return null;
  const saved = json.value;
  if (typeof saved !== 'object' || saved === null || !('savedAt' in saved) || !('record' in saved)) return null;
  return typeof saved.savedAt === 'string' ? { savedAt: saved.savedAt, record: saved.record } : null;
}
