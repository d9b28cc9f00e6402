// The captures a person may open: picked, dropped, opened before, or brought along as samples. Each leaves here as a
// token; what lies behind it stays in the shell.

import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { basename, join, sep } from 'node:path';
import type { Picked, RecentCapture } from '../../core/bridge/shellMessages.ts';
import type { Problem } from '../../core/reading/problem.ts';
import { SAMPLE_DRIVES } from '../../core/simulation/sampleDrives/index.ts';
import { isBundleFile } from '../bundles/isBundleFile.ts';
import { type Places, whereaboutsOf, withCapture } from '../program/places.ts';
import type { KeptFile } from '../store/keptFile.ts';
import { CaptureTokens, type GivenFile } from './captureTokens.ts';
import { openRegularFile } from './openRegularFile.ts';

export interface CaptureLibraryParts {
  readonly places: KeptFile<Places>;
  /** Folder of the sample drives. */
  readonly drives: string;
  /** Where the store keeps a capture of this hash, that came in a bundle; null where it has none. */
  keptCapture(sha256: string): Promise<string | null>;
}

export type Taken = { readonly ok: true; readonly picked: Picked } | { readonly ok: false; readonly problem: Problem };

export class CaptureLibrary {
  readonly tokens = new CaptureTokens();
  readonly #parts: CaptureLibraryParts;

  constructor(parts: CaptureLibraryParts) {
    this.#parts = parts;
  }

  /** A file that was picked, with its size; 0 where it cannot be asked for: opening it will say why. */
  async pick(path: string, given: GivenFile = {}): Promise<Picked> {
    const sample = path.startsWith(this.#parts.drives + sep);
    const token = this.tokens.give(path, { ...given, sample });
    const bytes = await stat(path).then(
      ({ size }) => size,
      () => 0,
    );
    const name = this.tokens.find(token)?.name ?? basename(path);
    const bundle = !sample && given.kept !== true && (await isBundleFile(path, name));
    return { token, name, bytes, sample, ...(bundle ? { bundle } : {}) };
  }

  /** A file that was dropped: what is no file is refused at once, with the reason. */
  async take(path: string): Promise<Taken> {
    if (path === '') return { ok: false, problem: notOnDisk() };
    const opened = await openRegularFile(path, basename(path));
    if (!opened.ok) return opened;
    await opened.value.handle.close();
    return { ok: true, picked: await this.pick(path) };
  }

  async sampleDrives(): Promise<(Picked & { words: string })[]> {
    const present = await Promise.all(
      SAMPLE_DRIVES.map(async ({ file, words }) => ({ ...(await this.pick(join(this.#parts.drives, file))), words })),
    );
    return present.filter(({ bytes }) => bytes > 0);
  }

  /** A sample drive by its name: "van-before". */
  sampleNamed(name: string): Promise<Picked | null> {
    const drive = SAMPLE_DRIVES.find((sample) => sample.name === name);
    return drive === undefined ? Promise.resolve(null) : this.pick(join(this.#parts.drives, drive.file));
  }

  /**
   * Where a capture of a record lies now: kept with a vehicle that came in a bundle, where it was last seen, or among the
   * samples. `name` is its name in the record.
   */
  async find(sha256: string, name: string): Promise<Picked | null> {
    const kept = await this.#parts.keptCapture(sha256);
    if (kept !== null) return this.pick(kept, { name, kept: true });
    const path = whereaboutsOf(await this.#parts.places.read(), sha256) ?? (await this.#sampleWith(sha256));
    if (path === null) return null;
    const taken = await this.take(path);
    return taken.ok ? taken.picked : null;
  }

  /** The path of that capture, for the shell alone; null where it is not found. */
  async whereIs(sha256: string, name: string): Promise<string | null> {
    const picked = await this.find(sha256, name);
    return picked === null ? null : (this.tokens.find(picked.token)?.path ?? null);
  }

  async recent(): Promise<RecentCapture[]> {
    const { recent } = await this.#parts.places.read();
    return Promise.all(
      recent.map(async ({ path, sha256 }) => {
        const picked = await this.pick(path);
        return { ...picked, sha256, there: (await this.take(path)).ok };
      }),
    );
  }

  /** Remembers where a file of this hash lies. Gives its path, or null for a token that is none and for a kept copy. */
  async remember(token: string, sha256: string): Promise<string | null> {
    const file = this.tokens.find(token);
    if (file === null || file.kept) return null;
    await this.#parts.places.change((places) => withCapture(places, { path: file.path, sha256 }));
    return file.path;
  }

  /** Sample drives are small, and looked through only when a record asks for a capture that is nowhere else. */
  async #sampleWith(sha256: string): Promise<string | null> {
    for (const { file } of SAMPLE_DRIVES) {
      const path = join(this.#parts.drives, file);
      const bytes = await readFile(path).catch(() => null);
      if (bytes !== null && createHash('sha256').update(bytes).digest('hex') === sha256) return path;
    }
    return null;
  }
}

const notOnDisk = (): Problem => ({
  id: 'notOnDisk',
  what: 'What was dropped is not a file on this computer.',
  where: 'the window',
  doNext: 'Save it as a file first, then open that.',
});
