import { describe, expect, it } from 'vitest';
import { atomicWrite, TEMPORARY_NAME } from '../../../../main/store/atomicWrite.ts';
import { CrashableDisk } from '../../../fault/support/crashableDisk.ts';

const bytes = Buffer.from('new');

describe('atomicWrite', () => {
  it('writes on where the disk takes fewer bytes than it was given', async () => {
    const disk = new CrashableDisk();
    const create: typeof disk.files.create = async (path, mode) => {
      const file = await disk.files.create(path, mode);
      return { ...file, write: (all) => file.write(all.subarray(0, 1)) };
    };
    await atomicWrite({ ...disk.files, create }, '/here/file', bytes);
    expect(disk.now()).toEqual(new Map([['/here/file', bytes]]));
    expect(disk.order.filter((what) => what === 'write')).toHaveLength(3);
  });

  it('puts the temporary file into the same folder, under a name that only we use', async () => {
    const disk = new CrashableDisk();
    await atomicWrite(disk.files, '/here/file', bytes);
    const created = disk.log.find((operation) => operation.what === 'create');
    const [folder, name] = [created?.path.slice(0, 6), created?.path.slice(6)];
    expect(folder).toBe('/here/');
    expect(name).toMatch(TEMPORARY_NAME);
  });

  it('leaves the old file and no other when it may not rename', async () => {
    const disk = new CrashableDisk();
    await atomicWrite(disk.files, '/here/file', Buffer.from('old'));
    const beforeRename = () => Promise.reject(new Error('somebody else was here'));
    await expect(atomicWrite(disk.files, '/here/file', bytes, { beforeRename })).rejects.toThrow('somebody else');
    expect(disk.now()).toEqual(new Map([['/here/file', Buffer.from('old')]]));
  });
});

describe('T-SAVE-6: another program holds the file', () => {
  /** Refuses the first renames; time passes only when somebody waits. */
  function held(refusals: number, code: string) {
    const disk = new CrashableDisk();
    let left = refusals;
    let ms = 0;
    const rename: typeof disk.files.rename = async (from, to) => {
      if (left-- > 0) throw Object.assign(new Error(code), { code });
      return disk.files.rename(from, to);
    };
    const patience = {
      retryForMs: 10_000,
      now: () => ms,
      wait: async (pause: number) => {
        ms += pause;
      },
    };
    return { disk, files: { ...disk.files, rename }, patience, waited: () => ms };
  }

  it.each([
    [1, 'EPERM'],
    [1, 'EACCES'],
    [5, 'EBUSY'],
  ] as const)('%i refusals with %s are waited out', async (refusals, code) => {
    const { disk, files, patience } = held(refusals, code);
    await atomicWrite(files, '/here/file', bytes, { patience });
    expect(disk.now()).toEqual(new Map([['/here/file', bytes]]));
  });

  it('for ever: gives up within ten seconds and leaves nothing behind', async () => {
    const { disk, files, patience, waited } = held(Number.POSITIVE_INFINITY, 'EBUSY');
    await expect(atomicWrite(files, '/here/file', bytes, { patience })).rejects.toMatchObject({ code: 'EBUSY' });
    expect(waited()).toBeLessThanOrEqual(10_000);
    expect(waited()).toBeGreaterThan(9000);
    expect(disk.now()).toEqual(new Map());
  });

  it('does not wait for a fault that waiting does not mend', async () => {
    const { files, patience, waited } = held(1, 'ENOSPC');
    await expect(atomicWrite(files, '/here/file', bytes, { patience })).rejects.toMatchObject({ code: 'ENOSPC' });
    expect(waited()).toBe(0);
  });
});
