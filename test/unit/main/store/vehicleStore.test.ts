import { describe, expect, it } from 'vitest';
import { vehicleEntrySchema } from '../../../../core/bridge/shellMessages.ts';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import { RECORD_VERSION, type VehicleRecord } from '../../../../core/record/schema.ts';
import { seal } from '../../../../main/store/sealedRecord.ts';
import { VehicleStore } from '../../../../main/store/vehicleStore.ts';
import { CrashableDisk, diskAfterCrash } from '../../../fault/support/crashableDisk.ts';

const van = newVehicle({ id: 'van-14', name: 'Van 14', createdAt: '2026-03-02T08:00:00Z' });
const MORNING = Date.parse('2026-03-02T08:00:00Z');

/** A store whose clock goes on by a minute each time it is read. */
function storeOn(files: CrashableDisk['files']): VehicleStore {
  let ms = MORNING;
  return new VehicleStore({ folder: '/vehicles', files, nowMs: () => (ms += 60_000) });
}

const sampleCapture: VehicleRecord['captures'][string] = {
  id: 'c1',
  kind: 'before',
  name: 'van-before.csv',
  bytes: 12,
  sha256: 'ab'.repeat(32),
  addedAt: '2026-03-02T08:00:00Z',
  durationS: 60,
  rows: 600,
  columnChoice: null,
  sample: true,
};

describe('VehicleStore', () => {
  it('gives back what was saved, with the view, which is kept apart', async () => {
    const disk = new CrashableDisk();
    const store = storeOn(disk.files);
    expect(await store.save(van)).toEqual({ saved: true, savedAt: '2026-03-02T08:01:00.000Z' });
    await store.saveView('van-14', { cursorS: 12.5 });
    const loaded = await storeOn(disk.files).load('van-14');
    expect(loaded).toEqual({ ok: true, record: van, view: { cursorS: 12.5 }, readOnly: false, notice: null });
  });

  it('lists vehicles, the last saved first, and says which are samples', async () => {
    const store = storeOn(new CrashableDisk().files);
    await store.save(van);
    await store.save({
      ...van,
      id: 'van-9',
      identity: { ...van.identity, name: 'Van 9' },
      captures: { c1: sampleCapture },
    });
    const entry = { archived: false, savedAt: '2026-03-02T08:01:00.000Z', captures: 0, sample: false };
    const list = await store.list();
    expect(list.map((found) => found.name)).toEqual(['Van 9', 'Van 14']);
    expect(list[0]).toMatchObject({ captures: 1, sample: true });
    expect(list[1]).toEqual({ ...entry, id: 'van-14', name: 'Van 14' });
  });

  describe('a vehicle whose only save is damaged', () => {
    const damagedDisk = async (damage: (bytes: Buffer) => Buffer) => {
      const disk = new CrashableDisk();
      await storeOn(disk.files).save(van);
      const [path = '', bytes = new Uint8Array()] =
        [...disk.now()].find(([name]) => name.endsWith('record.json')) ?? [];
      return { path, store: storeOn(diskAfterCrash(new Map([[path, damage(Buffer.from(bytes))]]))) };
    };
    const flipped = (bytes: Buffer): Buffer => {
      bytes.writeUInt8(bytes.readUInt8(bytes.length - 10) ^ 1, bytes.length - 10);
      return bytes;
    };

    it('stays in the list under its name, with the file that is damaged and what to do', async () => {
      const { path, store } = await damagedDisk(flipped);
      const [entry, ...others] = await store.list();
      expect(others).toEqual([]);
      expect(entry).toMatchObject({ id: 'van-14', name: 'Van 14', damaged: { id: 'lostRecord' } });
      expect(entry?.damaged?.where).toBe(path.split('/').slice(-3).join('/'));
      expect(entry?.damaged?.doNext).toMatch(/backup.*generations.*bundle/);
      expect(vehicleEntrySchema.safeParse(entry).success).toBe(true);
    });

    it('is listed without a name where not even that can be made out', async () => {
      const { store } = await damagedDisk(() => Buffer.alloc(64));
      expect(await store.list()).toMatchObject([{ name: 'A damaged vehicle', damaged: { id: 'lostRecord' } }]);
    });

    it('says the same when it is opened: there is no earlier save to choose', async () => {
      const { store } = await damagedDisk(flipped);
      expect(await store.load('van-14')).toMatchObject({ ok: false, problem: { id: 'lostRecord' }, earlier: [] });
    });

    it('takes no id from its bytes that is not its own', async () => {
      const { path, store } = await damagedDisk((bytes) => Buffer.from(bytes.toString().replace('van-14', 'van-15')));
      const folder = path.split('/').at(-2);
      expect(await store.list()).toMatchObject([{ id: folder, name: 'Van 14' }]);
    });
  });

  it('lists nothing of a vehicle that was deleted', async () => {
    const store = storeOn(new CrashableDisk().files);
    await store.save(van);
    await store.remove('van-14');
    expect(await store.list()).toEqual([]);
  });

  it('keeps the ten saves before the newest, youngest first', async () => {
    const store = storeOn(new CrashableDisk().files);
    for (let i = 0; i < 15; i++) await store.save({ ...van, identity: { ...van.identity, name: `Van ${i}` } });
    const earlier = await store.earlier('van-14');
    expect(earlier).toHaveLength(10);
    const restored = await store.restore('van-14', earlier[0]?.generation ?? '');
    expect(restored.ok && restored.record.identity.name).toBe('Van 13');
  });

  it('saving what is saved already changes nothing and pushes no earlier save out', async () => {
    const disk = new CrashableDisk();
    const store = storeOn(disk.files);
    const first = await store.save(van);
    const operations = disk.log.length;
    expect(await store.save(structuredClone(van))).toEqual(first);
    expect(disk.log).toHaveLength(operations);
    expect(await store.earlier('van-14')).toEqual([]);
  });

  it('names no folder or file after what a vehicle is called', async () => {
    const disk = new CrashableDisk();
    const id = '../../evil';
    await storeOn(disk.files).save({ ...van, id, identity: { ...van.identity, name: 'CON: "x"/..\\y' } });
    const paths = [...disk.now().keys()];
    expect(paths).toHaveLength(1);
    expect(paths[0]).toMatch(/^\/vehicles\/[0-9a-f]{32}\/record\.json$/);
    expect(await storeOn(disk.files).load(id)).toMatchObject({ ok: true });
  });

  it('a vehicle that is not there, and one whose disk gives nothing out, are told apart', async () => {
    const disk = new CrashableDisk();
    expect(await storeOn(disk.files).load('van-14')).toMatchObject({ problem: { id: 'missingRecord' }, earlier: [] });
    const readWhole = () => Promise.reject(Object.assign(new Error('EIO'), { code: 'EIO' }));
    const loaded = await storeOn({ ...disk.files, readWhole }).load('van-14');
    expect(loaded).toMatchObject({ problem: { id: 'unreadableRecord' }, earlier: [] });
  });
});

describe('T-SAVE-9: a record of a newer version', () => {
  const newer = {
    ...van,
    version: RECORD_VERSION + 1,
    hologram: { of: 'the exhaust' },
    identity: { ...van.identity, smell: 'sulphur' },
  };

  it('opens read-only with a sentence; no edit reaches it, and not a byte changes', async () => {
    const disk = new CrashableDisk();
    await storeOn(disk.files).save(van);
    const path = [...disk.now().keys()].find((name) => name.endsWith('record.json')) ?? '';
    const bytes = seal('2030-01-01T00:00:00Z', newer);
    const files = diskAfterCrash(new Map([[path, bytes]]));
    const store = storeOn(files);

    const loaded = await store.load('van-14');
    expect(loaded).toMatchObject({ ok: true, record: van, readOnly: true, notice: { id: 'newerVersion' } });
    expect(await store.save(van)).toMatchObject({ saved: false, problem: { id: 'newerVersion' } });
    await store.settle();
    expect(await files.readWhole(path)).toEqual(Buffer.from(bytes));
    expect(await store.list()).toMatchObject([{ id: 'van-14', name: 'Van 14' }]);
  });
});
