import { type Hasher, ownHasher } from './hasher.ts';
import { threadHasher } from './threadHasher.ts';

/** A thread takes some hundredths of a second to start: by then this much is read and hashed. */
const LONG_BYTES = 16_000_000;

/** Gives a hasher for so many bytes: in this thread for a short file, in one of its own, run by `script`, for a long one. */
export function hasherFor(script: string): (bytes: number) => Hasher {
  return (bytes) => (bytes < LONG_BYTES ? ownHasher() : threadHasher(script));
}
