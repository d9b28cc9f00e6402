// T-SAVE-4 and T-SAVE-5: a disk that takes no more, or refuses.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { atomicWrite } from '../../main/store/atomicWrite.ts';
import { type FileLayer, systemFiles } from '../../main/store/fileLayer.ts';
import { VehicleStore } from '../../main/store/vehicleStore.ts';
import { bundleChild } from './support/bundleChild.ts';
import { numberOf, vanFourteen } from './support/vanFourteen.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-full-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const BLOCK = 4096;
const PLACES = Array.from({ length: 64 }, (_, i) => i * BLOCK);
const CODES = ['ENOSPC', 'EDQUOT', 'EIO', 'EFBIG'] as const;

/** A disk with room for so many more bytes: a write that does not fit is cut short, the next one fails. */
function diskWithRoom(room: number, code: string): FileLayer {
  let left = room;
  return {
    ...systemFiles,
    create: async (path, mode) => {
      const file = await systemFiles.create(path, mode);
      return {
        ...file,
        write: async (bytes) => {
          if (left === 0) throw Object.assign(new Error(code), { code });
          const took = Math.min(left, bytes.byteLength);
          left -= took;
          return file.write(bytes.subarray(0, took));
        },
      };
    },
  };
}

function storeWith(files: FileLayer) {
  return new VehicleStore({ folder, files, nowMs: () => Date.parse('2026-03-02T08:00:00Z') });
}

/** Every file below the folder with its bytes. */
function everything(): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    files.map((entry) => [
      join(entry.parentPath, entry.name),
      readFileSync(join(entry.parentPath, entry.name), 'latin1'),
    ]),
  );
}

const isRecord = ([path]: [string, string]) => path.endsWith('record.json');

describe('T-SAVE-4: a full disk', () => {
  it.each(CODES)('with %s at 64 places: the old record stands, one sentence, nothing left behind', async (code) => {
    await storeWith(systemFiles).save(vanFourteen(1));
    const before = Object.entries(everything()).filter(isRecord);
    for (const room of PLACES) {
      const store = storeWith(diskWithRoom(room, code));
      await store.load('van-14');
      const saved = await store.save(vanFourteen(2));
      expect(saved).toMatchObject({ saved: false, problem: { where: 'the record of Van 14' } });
      expect(Object.entries(everything()).filter(isRecord)).toEqual(before);
      expect(Object.keys(everything()).filter((path) => path.endsWith('.new'))).toEqual([]);
    }
  });

  it('keeps nothing from the next save once there is room', async () => {
    await storeWith(systemFiles).save(vanFourteen(1));
    let room = 100;
    const full: FileLayer = { ...systemFiles, create: (path, mode) => diskWithRoom(room, 'ENOSPC').create(path, mode) };
    const store = storeWith(full);
    await store.load('van-14');
    expect(await store.save(vanFourteen(2))).toMatchObject({
      saved: false,
      problem: { doNext: expect.stringContaining('saved by itself') },
    });
    room = Number.MAX_SAFE_INTEGER;
    expect((await store.save(vanFourteen(3))).saved).toBe(true);
    const loaded = await store.load('van-14');
    expect(loaded.ok && numberOf(loaded.record)).toBe(3);
  });

  it('the same for a file outside, such as an exported sheet', async () => {
    const sheet = join(folder, 'sheet.html');
    writeFileSync(sheet, 'the old sheet');
    for (const room of PLACES) {
      const write = atomicWrite(diskWithRoom(room, 'ENOSPC'), sheet, Buffer.alloc(65 * BLOCK));
      await expect(write).rejects.toMatchObject({ code: 'ENOSPC' });
      expect(everything()).toEqual({ [sheet]: 'the old sheet' });
    }
  });

  it('the same with a limit that the system itself sets', async () => {
    await storeWith(systemFiles).save(vanFourteen(1, 20_000));
    const before = Object.entries(everything()).filter(isRecord);
    const child = await bundleChild('saveOnce', folder);
    // The shell's limit is in blocks of 512 bytes: 128 kB, where the record needs 400.
    const told = execFileSync('sh', ['-c', 'ulimit -f 256; exec "$@"', 'sh', process.execPath, child, folder, '2'], {
      encoding: 'utf8',
    });
    expect(JSON.parse(told)).toMatchObject({ saved: false, problem: { id: 'notWritten.EFBIG' } });
    expect(Object.entries(everything()).filter(isRecord)).toEqual(before);
    expect(Object.keys(everything()).filter((path) => path.endsWith('.new'))).toEqual([]);
  });
});

describe('T-SAVE-5: a folder that refuses', () => {
  const REFUSALS = ['EROFS', 'EACCES', 'ENOENT', 'ENAMETOOLONG', 'ENODEV'] as const;

  it.each(REFUSALS)('%s names the record and says what to do', async (code) => {
    await storeWith(systemFiles).save(vanFourteen(1, 20_000));
    const fault = Object.assign(new Error(code), { code });
    const store = storeWith({ ...systemFiles, create: () => Promise.reject(fault) });
    await store.load('van-14');
    const saved = await store.save(vanFourteen(2, 20_000));
    expect(saved).toMatchObject({ saved: false, problem: { id: `notWritten.${code}`, where: 'the record of Van 14' } });
    if (!saved.saved) expect(saved.problem.doNext).toMatch(/^[A-Z].+\.$/);
    const loaded = await storeWith(systemFiles).load('van-14');
    expect(loaded.ok && numberOf(loaded.record)).toBe(1);
  });
});
