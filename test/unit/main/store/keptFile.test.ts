import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { keptFile } from '../../../../main/store/keptFile.ts';
import { CrashableDisk, diskAfterCrash } from '../../../fault/support/crashableDisk.ts';

const schema = z.strictObject({ count: z.number() });
const on = (files: CrashableDisk['files']) => keptFile(files, '/data/settings.json', schema, { count: 0 });

describe('keptFile', () => {
  it('gives the start value at a first start, then what was kept', async () => {
    const disk = new CrashableDisk();
    expect(await on(disk.files).read()).toEqual({ count: 0 });
    await on(disk.files).write({ count: 7 });
    expect(await on(disk.files).read()).toEqual({ count: 7 });
  });

  it.each(['', '{', '[1]', '{"count":"7"}', '{"count":7,"more":1}'])('reads %j as the start value', async (text) => {
    const files = diskAfterCrash(new Map([['/data/settings.json', Buffer.from(text)]]));
    expect(await on(files).read()).toEqual({ count: 0 });
  });

  it('loses no change of many at once', async () => {
    const disk = new CrashableDisk();
    const file = on(disk.files);
    await Promise.all(Array.from({ length: 50 }, () => file.change(({ count }) => ({ count: count + 1 }))));
    expect(await on(disk.files).read()).toEqual({ count: 50 });
  });

  it('a choice holds for this run although the disk refused it, and the next change is tried again', async () => {
    const disk = new CrashableDisk();
    let full = true;
    const create: typeof disk.files.create = (path, mode) =>
      full ? Promise.reject(new Error('full')) : disk.files.create(path, mode);
    const file = on({ ...disk.files, create });
    await expect(file.write({ count: 3 })).rejects.toThrow('full');
    expect(await file.read()).toEqual({ count: 3 });
    full = false;
    await file.change(({ count }) => ({ count: count + 1 }));
    expect(await on(disk.files).read()).toEqual({ count: 4 });
  });
});
