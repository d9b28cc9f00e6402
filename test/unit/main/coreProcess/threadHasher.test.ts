import { createHash } from 'node:crypto';
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

  it('needs the bytes no longer once it has taken them, however long they are', async () => {
    const hasher = threadHasher(script);
    const long = Buffer.alloc(40_000_000, 'a');
    await hasher.take(long.subarray(0, 1_000_000));
    long.fill('b');
    expect(await hasher.digest()).toBe(MILLION_A);
  });

  it('hashes more than all of its places hold, in one piece or in many', async () => {
    const bytes = Buffer.from(Array.from({ length: 40_000_000 }, (_, i) => (i * 31 + (i >> 11)) & 255));
    const expected = createHash('sha256').update(bytes).digest('hex');
    const whole = threadHasher(script);
    await whole.take(bytes);
    expect(await whole.digest()).toBe(expected);
    const parted = threadHasher(script);
    for (let from = 0; from < bytes.length; from += 700_001) await parted.take(bytes.subarray(from, from + 700_001));
    expect(await parted.digest()).toBe(expected);
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
