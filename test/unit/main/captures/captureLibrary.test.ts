import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SAMPLE_DRIVES } from '../../../../core/simulation/sampleDrives/index.ts';
import { CaptureLibrary } from '../../../../main/captures/captureLibrary.ts';
import { placesFile, withoutRecent } from '../../../../main/program/places.ts';
import { systemFiles } from '../../../../main/store/fileLayer.ts';

const DRIVES = resolve('assets/drives');
const SHA = 'ab'.repeat(32);

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-library-'));
  file = join(folder, 'van.csv');
  writeFileSync(file, 'time,rpm\n0,800\n');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const places = () => placesFile(systemFiles, join(folder, 'places.json'));
const library = (keptCapture: (sha256: string) => Promise<string | null> = async () => null) =>
  new CaptureLibrary({ places: places(), drives: DRIVES, keptCapture });

describe('T-EL-21: tokens', () => {
  it('a picked file is a random token, a name and a size, and never a path', async () => {
    const picked = await library().pick(file);
    expect(picked).toEqual({ token: expect.stringMatching(/^[\w-]{32}$/), name: 'van.csv', bytes: 15, sample: false });
    expect(JSON.stringify(picked)).not.toContain(folder);
    expect((await library().pick(file)).token).not.toBe(picked.token);
  });

  it('no string that was not given out leads to a file', async () => {
    const one = library();
    const { token } = await one.pick(file);
    expect(one.tokens.find(token)?.path).toBe(file);
    const near = fc.constantFrom(file, `${token} `, token.toLowerCase(), token.slice(1), 'constructor', '__proto__');
    fc.assert(
      fc.property(fc.oneof(fc.string(), near), (guess) => {
        fc.pre(guess !== token);
        expect(one.tokens.find(guess)).toBeNull();
      }),
      { numRuns: 1000 },
    );
  });

  it('what was dropped and is no file is refused with its name and what to do', async () => {
    const inside = join(folder, 'recordings');
    mkdirSync(inside);
    expect(await library().take(inside)).toMatchObject({
      ok: false,
      problem: { id: 'notRead.EISDIR', where: 'recordings' },
    });
    expect(await library().take('')).toMatchObject({ ok: false, problem: { id: 'notOnDisk' } });
    expect(await library().take(file)).toMatchObject({ ok: true, picked: { name: 'van.csv' } });
  });
});

describe('C6: captures opened before', () => {
  it('come back after a restart, the last opened first, and a vanished one says so', async () => {
    const first = library();
    const other = join(folder, 'later.csv');
    copyFileSync(file, other);
    await first.remember((await first.pick(file)).token, SHA);
    await first.remember((await first.pick(other)).token, 'cd'.repeat(32));
    rmSync(file);
    const recent = await library().recent();
    expect(recent.map(({ name, there, sha256 }) => [name, there, sha256.slice(0, 2)])).toEqual([
      ['later.csv', true, 'cd'],
      ['van.csv', false, 'ab'],
    ]);
  });

  it('a capture of a record is found where it was last seen, and not when it has moved', async () => {
    const first = library();
    await first.remember((await first.pick(file)).token, SHA);
    expect(await library().find(SHA, 'van.csv')).toMatchObject({ name: 'van.csv' });
    renameSync(file, join(folder, 'moved.csv'));
    expect(await library().find(SHA, 'van.csv')).toBeNull();
    expect(await library().find('cd'.repeat(32), 'van.csv')).toBeNull();
  });

  it('forgetting the list keeps the captures of records findable', async () => {
    const first = library();
    await first.remember((await first.pick(file)).token, SHA);
    await places().change(withoutRecent);
    expect(await library().recent()).toEqual([]);
    expect(await library().find(SHA, 'van.csv')).not.toBeNull();
  });

  it('a token of nobody is not remembered', async () => {
    expect(await library().remember('nobody’s', SHA)).toBeNull();
    expect(await library().recent()).toEqual([]);
  });
});

describe('captures that came in a bundle', () => {
  it('are found by their hash before any other, by the name of the record, and are on no list', async () => {
    const copy = join(folder, SHA);
    copyFileSync(file, copy);
    const one = library(async (sha256) => (sha256 === SHA ? copy : null));
    await one.remember((await one.pick(file)).token, SHA);
    const found = await one.find(SHA, 'van of the depot.csv');
    expect(found).toMatchObject({ name: 'van of the depot.csv', bytes: 15, sample: false });
    expect(one.tokens.find(found?.token ?? '')?.path).toBe(copy);
    expect(await one.remember(found?.token ?? '', SHA)).toBeNull();
    expect((await one.recent()).map(({ name }) => name)).toEqual(['van.csv']);
  });
});

describe('F11, F13: the invented drives', () => {
  it('are listed with their words, in their order, and marked', async () => {
    const drives = await library().sampleDrives();
    expect(drives.map(({ name }) => name)).toEqual(SAMPLE_DRIVES.map(({ file: name }) => name));
    expect(drives.every(({ sample, words, bytes }) => sample && words.startsWith('Invented') && bytes > 0)).toBe(true);
  });

  it('are found by their hash wherever the program has been installed since', async () => {
    const sha256 = createHash('sha256')
      .update(readFileSync(join(DRIVES, 'van-trap.tsv')))
      .digest('hex');
    expect(await library().find(sha256, 'van-trap.tsv')).toMatchObject({ name: 'van-trap.tsv', sample: true });
  });

  it('a file beside them, or in a folder whose name begins alike, is no sample', async () => {
    expect((await library().pick(`${DRIVES}-mine/van.csv`)).sample).toBe(false);
    expect((await library().pick(file)).sample).toBe(false);
  });
});
