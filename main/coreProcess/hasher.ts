import { createHash } from 'node:crypto';

/** Takes the bytes of a file one after another and gives their SHA-256. */
export interface Hasher {
  /** The bytes may be kept and changed by others once this has resolved. */
  take(bytes: Uint8Array): Promise<void>;
  /** Lower-case hexadecimal digits; null where they could not be worked out. */
  digest(): Promise<string | null>;
  /** Nothing more will come, and nobody waits for the digest. */
  drop(): void;
}

/** For bytes whose hash nobody needs. */
export function noHasher(): Hasher {
  return { take: async () => undefined, digest: async () => null, drop: () => undefined };
}

/** Hashes in this thread. */
export function ownHasher(): Hasher {
  const hash = createHash('sha256');
  return {
    take: async (bytes) => void hash.update(bytes),
    digest: async () => hash.digest('hex'),
    drop: () => undefined,
  };
}
