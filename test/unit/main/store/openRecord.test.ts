import { describe, expect, it } from 'vitest';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import { RECORD_VERSION } from '../../../../core/record/schema.ts';
import { openRecord } from '../../../../main/store/openRecord.ts';
import { seal } from '../../../../main/store/sealedRecord.ts';
import { VehicleStore } from '../../../../main/store/vehicleStore.ts';
import { CrashableDisk, diskAfterCrash } from '../../../fault/support/crashableDisk.ts';

const van = newVehicle({ id: 'van-14', name: 'Van 14', createdAt: '2026-03-02T08:00:00Z' });
const newer = {
  ...van,
  version: RECORD_VERSION + 1,
  hologram: { of: 'the exhaust' },
  identity: { ...van.identity, smell: 'sulphur' },
};

describe('openRecord', () => {
  it('opens a record of today', () => {
    expect(openRecord(structuredClone(van))).toEqual({ ok: true, record: van, newerVersion: null });
  });

  it.each([null, 7, 'text', [], {}, { version: '1' }, { ...van, version: 0.5 }, { ...van, windows: 3 }])(
    'refuses %j with what to do',
    (value) => {
      expect(openRecord(value)).toMatchObject({ ok: false, problem: { id: 'damagedRecord' } });
    },
  );

  it('a newer one is shown as far as it is understood', () => {
    const opened = openRecord(newer);
    expect(opened).toEqual({ ok: true, record: van, newerVersion: RECORD_VERSION + 1 });
    expect(newer.hologram).toBeDefined();
  });

  it('a newer one in which something known has changed its form is not guessed at', () => {
    const opened = openRecord({ ...newer, windows: ['another form'] });
    expect(opened).toMatchObject({ ok: false, problem: { id: 'newerVersion' } });
    if (!opened.ok) expect(opened.problem.what).toContain(`form ${RECORD_VERSION + 1}`);
  });
});

describe('T-SAVE-9: a record of a newer version', () => {
  it('opens read-only with a sentence; no edit reaches it, and not a byte changes', async () => {
    const disk = new CrashableDisk();
    const nowMs = () => Date.parse('2026-03-02T08:00:00Z');
    await new VehicleStore({ folder: '/vehicles', files: disk.files, nowMs }).save(van);
    const path = [...disk.now().keys()].find((name) => name.endsWith('record.json')) ?? '';
    const bytes = seal('2030-01-01T00:00:00Z', newer);
    const files = diskAfterCrash(new Map([[path, bytes]]));
    const store = new VehicleStore({ folder: '/vehicles', files, nowMs });

    const loaded = await store.load('van-14');
    expect(loaded).toMatchObject({ ok: true, readOnly: true, notice: { id: 'newerVersion' } });
    expect(await store.save(van)).toMatchObject({ saved: false, problem: { id: 'newerVersion' } });
    expect(await files.readWhole(path)).toEqual(Buffer.from(bytes));
    expect(await store.list()).toMatchObject([{ id: 'van-14', name: 'Van 14' }]);
  });
});
