import { randomBytes } from 'node:crypto';
import { basename } from 'node:path';

/** A file that the window may have read, by a token that says nothing about where it lies. */
export interface TokenFile {
  readonly path: string;
  /** Name without folders. */
  readonly name: string;
  /** One of the invented drives that come with the program. */
  readonly sample: boolean;
  /** A copy of the program's own, of a capture that came in a bundle: no file of the person's. */
  readonly kept: boolean;
}

/** What is known of a file besides its path. */
export interface GivenFile {
  /** How the person knows it, where its own name does not tell. */
  readonly name?: string;
  readonly sample?: boolean;
  readonly kept?: boolean;
}

/** Longest name that is passed on: longer ones are cut in the middle of nowhere useful, and kept by their end. */
const LONGEST_NAME = 300;

/**
 * Tokens for picked files, for as long as the program runs. A token is random: no string that was not given out here
 * ever leads to a file.
 */
export class CaptureTokens {
  readonly #files = new Map<string, TokenFile>();
  readonly #tokens = new Map<string, string>();

  /** The same file has the same token all along. */
  give(path: string, { name = basename(path), sample = false, kept = false }: GivenFile = {}): string {
    const known = this.#tokens.get(path);
    if (known !== undefined) return known;
    const token = randomBytes(24).toString('base64url');
    this.#tokens.set(path, token);
    this.#files.set(token, { path, name: name.slice(-LONGEST_NAME), sample, kept });
    return token;
  }

  find(token: string): TokenFile | null {
    return this.#files.get(token) ?? null;
  }
}
