import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileBytes } from '../../../../main/coreProcess/fileBytes.ts';
import { threadHasher } from '../../../../main/coreProcess/threadHasher.ts';
import { buildThread } from '../../../support/buildThread.ts';

// SHA-256 of one million times "a": NIST, FIPS 180-2, example B.3.
const MILLION_A = 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0';

let folder = '';
let script = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-hash-'));
  script = await buildThread('main/coreProcess/hashThread.ts', folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const a = (count: number) => Buffer.alloc(count, 'a');

describe('hashing in a thread', () => {
  it.each([1_000_000, 1000, 999])('gives the published digest, in pieces of %i bytes', async (piece) => {
    const hasher = threadHasher(script);
    for (let left = 1_000_000; left > 0; left -= piece) await hasher.take(a(Math.min(piece, left)));
    expect(await hasher.digest()).toBe(MILLION_A);
  });

  it('hashes shared memory where it lies, and only the part that it is given', async () => {
    const hasher = threadHasher(script);
    const bytes = Buffer.from(new SharedArrayBuffer(1_000_002)).fill('b');
    bytes.fill('a', 1, 1_000_001);
    await hasher.take(bytes.subarray(1, 1_000_001));
    expect(bytes.subarray(1, 1_000_001)).toHaveLength(1_000_000);
    expect(await hasher.digest()).toBe(MILLION_A);
  });

  it('gives no digest where the thread fails, and the file is hashed all the same', async () => {
    const path = join(folder, 'van.csv');
    writeFileSync(path, a(1_000_000));
    const broken = join(folder, 'not there.cjs');
    const hasher = threadHasher(broken);
    await hasher.take(a(10));
    expect(await hasher.digest()).toBeNull();

    const opened = await fileBytes(path, 'van.csv', () => threadHasher(broken));
    if (!opened.ok) throw new Error(opened.problem.what);
    for await (const _chunk of opened.value.source.chunks());
    expect(await opened.value.finish()).toEqual({ ok: true, value: { sha256: MILLION_A } });
    await opened.value.close();
  });
});
