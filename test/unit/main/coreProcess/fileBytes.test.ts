import { execFileSync } from 'node:child_process';
import {
  appendFileSync,
  constants,
  mkdtempSync,
  readFileSync,
  rmSync,
  truncateSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import * as promises from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { HeldBytes } from '../../../../core/service/coreHost.ts';
import { fileBytes } from '../../../../main/coreProcess/fileBytes.ts';
import { type Hasher, noHasher } from '../../../../main/coreProcess/hasher.ts';

// The real functions, with what they are called with noted.
vi.mock('node:fs/promises', { spy: true });

const MIB = 1024 * 1024;
let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-bytes-'));
  file = join(folder, 'van.csv');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function opened(): Promise<HeldBytes> {
  const outcome = await fileBytes(file, 'van.csv');
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value;
}

async function readAll(bytes: HeldBytes, afterFirst: () => void = () => {}): Promise<Buffer> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of bytes.source.chunks()) {
    chunks.push(new Uint8Array(chunk));
    if (chunks.length === 1) afterFirst();
  }
  return Buffer.concat(chunks);
}

/** Bytes that differ everywhere, so that a piece in the wrong place shows. */
function bytesOf(length: number): Buffer {
  return Buffer.from(Uint8Array.from({ length }, (_, i) => (i * 2_654_435_761) >>> 24));
}

describe('fileBytes', () => {
  it.each([0, 1, MIB - 1, MIB, 2 * MIB + 7])(
    'gives %i bytes as they are, with the hash that sha256sum gives',
    async (length) => {
      const written = bytesOf(length);
      writeFileSync(file, written);
      const bytes = await opened();
      expect(bytes.source).toMatchObject({ name: 'van.csv', bytes: length });
      expect((await readAll(bytes)).equals(written)).toBe(true);
      const sha256 = execFileSync('sha256sum', [file], { encoding: 'utf8' }).slice(0, 64);
      expect(await bytes.finish()).toEqual({ ok: true, value: { sha256 } });
      await bytes.close();
    },
  );

  it('hashes the whole file also for a reader that had seen enough, or that reads twice', async () => {
    writeFileSync(file, bytesOf(3 * MIB));
    const sha256 = execFileSync('sha256sum', [file], { encoding: 'utf8' }).slice(0, 64);
    const early = await opened();
    for await (const _chunk of early.source.chunks()) break;
    expect(await early.finish()).toEqual({ ok: true, value: { sha256 } });
    const twice = await opened();
    await readAll(twice);
    await readAll(twice);
    expect(await twice.finish()).toEqual({ ok: true, value: { sha256 } });
    await early.close();
    await twice.close();
  });

  it('leaves a chunk as it is until the next one is asked for, though the disk works on that already', async () => {
    const written = bytesOf(4 * MIB);
    writeFileSync(file, written);
    const bytes = await opened();
    let at = 0;
    for await (const chunk of bytes.source.chunks()) {
      // Whoever reads the file meanwhile waits longer than the disk.
      expect(
        readFileSync(file)
          .subarray(at, at + chunk.length)
          .equals(chunk),
      ).toBe(true);
      expect(written.subarray(at, at + chunk.length).equals(chunk)).toBe(true);
      at += chunk.length;
    }
    expect(at).toBe(4 * MIB);
    await bytes.close();
  });

  it('starts the hasher when the file is opened, and lets it go with a file that was never read', async () => {
    writeFileSync(file, bytesOf(MIB));
    const said: string[] = [];
    const hasherFor = (length: number): Hasher => {
      said.push(`start ${length}`);
      return { ...noHasher(), drop: () => void said.push('drop') };
    };
    const outcome = await fileBytes(file, 'van.csv', hasherFor);
    if (!outcome.ok) throw new Error(outcome.problem.what);
    expect(said).toEqual([`start ${MIB}`]);
    await outcome.value.close();
    expect(said).toEqual([`start ${MIB}`, 'drop']);
  });
});

describe('T-OPEN-7: a file that is changed while it is read', () => {
  it.each([
    ['grows', () => appendFileSync(file, 'more')],
    ['shrinks', () => truncateSync(file, MIB + 1)],
    ['is touched', () => utimesSync(file, 1, 1)],
  ])('%s: noticed, and said', async (_words, change) => {
    writeFileSync(file, bytesOf(2 * MIB));
    const bytes = await opened();
    await readAll(bytes, change);
    expect(await bytes.finish()).toMatchObject({ ok: false, problem: { id: 'changedWhileRead', where: 'van.csv' } });
    await bytes.close();
  });

  it('is deleted: said, although this system would give its bytes to the end', async () => {
    writeFileSync(file, bytesOf(2 * MIB));
    const bytes = await opened();
    await readAll(bytes, () => unlinkSync(file));
    expect(await bytes.finish()).toMatchObject({ ok: false, problem: { id: 'notRead.ENOENT', where: 'van.csv' } });
    await bytes.close();
  });

  it('that stops coming is a sentence, not a fault of the program', async () => {
    writeFileSync(file, bytesOf(10));
    const bytes = await opened();
    await bytes.close(); // as when its disk is taken out
    await expect(readAll(bytes)).rejects.toMatchObject({ name: 'SourceFault', problem: { where: 'van.csv' } });
  });
});

describe('T-SAVE-11: a capture is opened for reading only', () => {
  it('with flags that cannot write, make or shorten', async () => {
    writeFileSync(file, 'x');
    const open = vi.mocked(promises.open);
    open.mockClear();
    const bytes = await opened();
    await readAll(bytes);
    await bytes.finish();
    await bytes.close();
    const flags = open.mock.calls.map(([, given]) => Number(given));
    const writing = constants.O_WRONLY | constants.O_RDWR | constants.O_CREAT | constants.O_TRUNC | constants.O_APPEND;
    expect(flags).toHaveLength(1);
    expect((flags[0] ?? writing) & writing).toBe(0);
  });
});
