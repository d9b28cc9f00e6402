// T-PRIV-4: deleting a vehicle leaves nothing of it in the data folder.

import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { VehicleRecord } from '../../../../../core/record/schema.ts';
import { CaptureLibrary } from '../../../../../main/captures/captureLibrary.ts';
import type { MenuBar } from '../../../../../main/menu/menuBar.ts';
import { vehicleHandlers } from '../../../../../main/messages/handlers/vehicles.ts';
import { placesFile } from '../../../../../main/program/places.ts';
import { atomicWrite } from '../../../../../main/store/atomicWrite.ts';
import { type FileLayer, systemFiles } from '../../../../../main/store/fileLayer.ts';
import { findKeptCapture } from '../../../../../main/store/keptCaptures.ts';
import { VehicleStore } from '../../../../../main/store/vehicleStore.ts';
import { keptRecord } from '../../../../support/keptRecord.ts';

const CANARY = 'CUSTOMERCANARY';

let folder = '';
let data = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-delete-'));
  data = join(folder, 'data');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function computer(files: FileLayer = systemFiles) {
  const store = new VehicleStore({ folder: join(data, 'vehicles'), files, nowMs: () => Date.now() });
  await store.start();
  const places = placesFile(systemFiles, join(data, 'places.json'));
  const keptCapture = (sha256: string) => findKeptCapture(systemFiles, join(data, 'vehicles'), sha256);
  const library = new CaptureLibrary({ places, drives: resolve('assets/drives'), keptCapture });
  const showRecent = vi.fn<MenuBar['showRecent']>();
  return {
    store,
    places,
    library,
    showRecent,
    answers: vehicleHandlers({ store, places, library, menu: { showRecent } }),
  };
}

const canaryRecord = (name = 'Van 14'): VehicleRecord => {
  const record = keptRecord();
  return { ...record, identity: { ...record.identity, name, customer: CANARY, complaint: CANARY } };
};
const shaOf = (record: VehicleRecord): string => Object.values(record.captures)[0]?.sha256 ?? '';

/** Every file below a folder. */
function filesIn(place: string): string[] {
  return readdirSync(place, { recursive: true, encoding: 'utf8' })
    .map((name) => join(place, name))
    .filter((path) => statSync(path).isFile());
}

/** A vehicle with earlier saves, a view, a kept capture, and a capture whose path tells a name. */
async function kept(there: Awaited<ReturnType<typeof computer>>): Promise<VehicleRecord> {
  const record = canaryRecord();
  await there.answers.saveVehicle({ record });
  await there.answers.saveVehicle({ record: canaryRecord('Van 14, renamed') });
  await there.answers.saveView({ id: record.id, view: { note: CANARY } });
  const captures = there.store.capturesFolder(record.id);
  await systemFiles.makeFolder(captures);
  await atomicWrite(systemFiles, join(captures, shaOf(record)), Buffer.from(CANARY), { mode: 0o400 });
  const own = join(folder, `${CANARY}.csv`);
  writeFileSync(own, 'time,rpm\n');
  await there.library.remember((await there.library.pick(own)).token, shaOf(record));
  return record;
}

describe('T-PRIV-4: a vehicle that is deleted', () => {
  it('leaves not a byte of what it held, and forgets where its captures lie; the person’s own file stays', async () => {
    const there = await computer();
    const { id } = await kept(there);
    const holding = () => filesIn(data).filter((path) => readFileSync(path).includes(CANARY));
    expect(holding().length).toBeGreaterThan(3);
    expect(await there.answers.deleteVehicle({ id })).toEqual({ problem: null });
    expect(holding()).toEqual([]);
    expect(filesIn(join(data, 'vehicles'))).toEqual([]);
    expect(await there.store.list()).toEqual([]);
    expect((await there.places.read()).lastVehicle).toBeNull();
    expect(there.showRecent).toHaveBeenLastCalledWith([]);
    expect(statSync(join(folder, `${CANARY}.csv`)).isFile()).toBe(true);
  });

  it('can be made anew under its id', async () => {
    const there = await computer();
    const record = await kept(there);
    await there.answers.deleteVehicle({ id: record.id });
    expect(await there.answers.saveVehicle({ record })).toMatchObject({ saved: true });
    expect(await there.answers.loadVehicle({ id: record.id })).toMatchObject({ ok: true, record, view: {} });
  });

  it('leaves what another vehicle needs', async () => {
    const there = await computer();
    const record = await kept(there);
    const other = { ...keptRecord(), id: 'other' };
    await there.answers.saveVehicle({ record: other });
    await there.answers.deleteVehicle({ id: record.id });
    expect(await there.library.find(shaOf(other), 'x.csv')).not.toBeNull();
    expect(await there.answers.loadVehicle({ id: 'other' })).toMatchObject({ ok: true, record: other });
  });

  it('is still listed where the disk refuses, says so, and can be deleted again', async () => {
    const there = await computer();
    const { id } = await kept(there);
    const refuse = () => Promise.reject(Object.assign(new Error('locked'), { code: 'EROFS' }));
    const locked = await computer({ ...systemFiles, remove: refuse });
    expect(await locked.answers.deleteVehicle({ id })).toMatchObject({ problem: { id: 'notWritten.EROFS' } });
    expect(await there.store.list()).toHaveLength(1);
    expect(await there.answers.deleteVehicle({ id })).toEqual({ problem: null });
  });
});
