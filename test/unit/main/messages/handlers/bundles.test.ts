// What the shell answers about bundles, with the real store, library and thread.

import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { dialog } from 'electron';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { withoutPrivate } from '../../../../../core/evidence/privacy.ts';
import { NOTHING_PRIVATE } from '../../../../../core/evidence/sheetInput.ts';
import type { VehicleRecord } from '../../../../../core/record/schema.ts';
import type { BundleWorker } from '../../../../../main/bundles/bundleWorker.ts';
import { CaptureLibrary } from '../../../../../main/captures/captureLibrary.ts';
import { bundleHandlers } from '../../../../../main/messages/handlers/bundles.ts';
import { exportBundle } from '../../../../../main/messages/handlers/exportBundle.ts';
import { placesFile } from '../../../../../main/program/places.ts';
import { systemFiles } from '../../../../../main/store/fileLayer.ts';
import { findKeptCapture } from '../../../../../main/store/keptCaptures.ts';
import { sha256Of } from '../../../../../main/store/sealedRecord.ts';
import { vehicleFolder } from '../../../../../main/store/vehicleFolder.ts';
import { VehicleStore } from '../../../../../main/store/vehicleStore.ts';
import { bundleWorkerIn } from '../../../../support/bundleThread.ts';
import { keptRecord } from '../../../../support/keptRecord.ts';

vi.mock('electron', () => ({ dialog: { showSaveDialog: vi.fn() } }));

const CAPTURE = 'Time,O2S B1S1\n0,0.45\n0.1,0.80\n';
const CAPTURE_SHA = createHash('sha256').update(CAPTURE).digest('hex');

let scripts = '';
let worker: BundleWorker;
beforeAll(async () => {
  scripts = mkdtempSync(join(tmpdir(), 'tailtrace-thread-'));
  worker = await bundleWorkerIn(scripts);
  return () => rmSync(scripts, { recursive: true, force: true });
});

let folder = '';
let capture = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-handlers-'));
  capture = join(folder, 'van-before.csv');
  writeFileSync(capture, CAPTURE);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The kept record, naming the capture of this test. */
function record(): VehicleRecord {
  const kept = keptRecord();
  const [known] = Object.values(kept.captures);
  if (known === undefined) throw new Error('The kept record names no capture.');
  return { ...kept, captures: { c1: { ...known, id: 'c1', name: 'van-before.csv', sha256: CAPTURE_SHA } } };
}

/** A computer of its own: a store, a library, what the shell answers with them. */
async function computer(name: string) {
  const data = join(folder, name);
  const store = new VehicleStore({ folder: join(data, 'vehicles'), files: systemFiles, nowMs: () => Date.now() });
  await store.start();
  const places = placesFile(systemFiles, join(data, 'places.json'));
  const library = new CaptureLibrary({
    places,
    drives: resolve('assets/drives'),
    keptCapture: (sha256) => findKeptCapture(systemFiles, join(data, 'vehicles'), sha256),
  });
  const exporting = { files: systemFiles, places, window: () => null, documents: () => data };
  const tools = { store, library, bundles: worker, exporting };
  return { ...tools, answers: bundleHandlers(tools), vehicles: join(data, 'vehicles') };
}

type Computer = Awaited<ReturnType<typeof computer>>;

/** Packs a bundle of a record, as a person who knows where its capture lies. */
async function bundleOf(handedOver: VehicleRecord): Promise<string> {
  const sender = await computer('sender');
  await sender.library.remember((await sender.library.pick(capture)).token, CAPTURE_SHA);
  const path = join(folder, 'van.tailtrace-bundle');
  vi.mocked(dialog.showSaveDialog).mockResolvedValue({ canceled: false, filePath: path });
  const wish = { suggestedName: 'van.tailtrace-bundle', record: handedOver, sheet: '<p>sheet</p>', captureIds: ['c1'] };
  const { exported, manifestSha256 } = await exportBundle(sender, wish);
  expect(exported).toEqual({ path, name: 'van.tailtrace-bundle', problem: null });
  expect(manifestSha256).toMatch(/^[0-9a-f]{64}$/);
  return path;
}

async function check({ library, answers }: Computer, path: string) {
  const picked = await library.pick(path);
  expect(picked.bundle).toBe(true);
  const checked = await answers.checkBundle({ token: picked.token });
  if (!checked.ok) throw new Error(checked.problem.what);
  return checked.bundle;
}

async function take(there: Computer, path: string, blind = false): Promise<string> {
  const { token, manifestSha256 } = await check(there, path);
  const taken = await there.answers.takeBundle({ token, manifestSha256, blind });
  if (!taken.ok) throw new Error(taken.problem.what);
  return taken.vehicleId;
}

async function kept({ store }: Computer, id: string): Promise<VehicleRecord> {
  const loaded = await store.load(id);
  if (!loaded.ok) throw new Error(loaded.problem.what);
  return loaded.record;
}

describe('a bundle that is taken in', () => {
  it('becomes the vehicle it was, and its capture is found without the file it came from', async () => {
    const path = await bundleOf(record());
    rmSync(capture);
    const there = await computer('receiver');
    expect(await check(there, path)).toMatchObject({
      vehicle: 'Van 14',
      here: 'nothing',
      otherCore: false,
      captures: [{ id: 'c1', name: 'van-before.csv', enclosed: true }],
    });
    expect(await take(there, path)).toBe(record().id);
    expect(await kept(there, record().id)).toEqual({ ...record(), blindReading: null });
    const found = await there.library.find(CAPTURE_SHA, 'van-before.csv');
    expect(found?.name).toBe('van-before.csv');
    const place = there.library.tokens.find(found?.token ?? '')?.path ?? '';
    expect(readFileSync(place, 'utf8')).toBe(CAPTURE);
    expect(place.startsWith(there.vehicles)).toBe(true);
  });

  it('is kept whole where it is read blind first, with the time at which that began', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    const { blindReading, ...rest } = await kept(there, await take(there, path, true));
    const { blindReading: _, ...sent } = record();
    expect(rest).toEqual(sent);
    const before = { windows: Object.keys(sent.windows), notes: Object.keys(sent.notes) };
    expect(blindReading).toEqual({ startedAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT/), lookedAt: null, before });
    expect(await check(there, path)).toMatchObject({ here: 'same' });
  });

  it('never writes over the vehicle that is there: it comes beside it', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    const mine = { ...record(), notes: {} };
    await there.store.save(mine);
    expect(await check(there, path)).toMatchObject({ here: 'other' });
    const id = await take(there, path);
    expect(id).not.toBe(mine.id);
    expect(await kept(there, mine.id)).toEqual(mine);
    const beside = await kept(there, id);
    expect(beside.identity.name).toMatch(/^Van 14 \(received \d{4}-\d\d-\d\d\)$/);
    expect({ ...beside, id: mine.id, identity: record().identity }).toEqual({ ...record(), blindReading: null });
    expect(await there.library.find(CAPTURE_SHA, 'x')).not.toBeNull();
  });

  it('tells what was signed in it after all that is signed here', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    const { o3, ...opinions } = record().opinions;
    await there.store.save({ ...record(), opinions });
    expect(await check(there, path)).toMatchObject({ here: 'other', opinions: 3, newOpinions: [o3] });
  });

  it('is nothing new where the very same record is there', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    await there.store.save(record());
    expect(await check(there, path)).toMatchObject({ here: 'same' });
    expect(await take(there, path)).toBe(record().id);
    expect(await there.store.list()).toHaveLength(1);
  });

  it('leaves a vehicle alone whose newest save is damaged, while there is one to go back to', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    await there.store.save({ ...record(), notes: {} });
    await there.store.save(record());
    const file = vehicleFolder(there.vehicles, record().id).record;
    writeFileSync(file, 'damaged');
    const { token, manifestSha256, here } = await check(there, path);
    expect(here).toBe('unreadable');
    const taken = await there.answers.takeBundle({ token, manifestSha256, blind: false });
    expect(taken).toMatchObject({ ok: false, problem: { id: 'bundle.unreadableHere', where: 'Van 14' } });
    expect(readFileSync(file, 'utf8')).toBe('damaged');
  });

  it('comes beside a vehicle of which no save can be read any more: that is the way back', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    await there.store.save(record());
    const file = vehicleFolder(there.vehicles, record().id).record;
    writeFileSync(file, 'damaged');
    expect(await check(there, path)).toMatchObject({ here: 'other' });
    const id = await take(there, path);
    expect(id).not.toBe(record().id);
    expect((await kept(there, id)).captures).toEqual(record().captures);
    expect(readFileSync(file, 'utf8')).toBe('damaged');
  });

  it('names who wrote in it, so that they are not asked to read it blind', async () => {
    const there = await computer('receiver');
    const { writers } = await check(there, await bundleOf(record()));
    const names = Object.values(record().opinions).map(({ author }) => author.name);
    expect(writers).toEqual(expect.arrayContaining(names));
    expect(writers).toEqual([...new Set(writers)].sort());
  });

  it('is taken in only as it was looked at', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    const { token, manifestSha256 } = await check(there, path);
    for (const ask of [
      { token: 'nobody’s', manifestSha256 },
      { token, manifestSha256: sha256Of('another') },
    ]) {
      expect(await there.answers.takeBundle({ ...ask, blind: false })).toMatchObject({
        ok: false,
        problem: { id: 'bundle.notPicked' },
      });
    }
    expect(await there.store.list()).toEqual([]);
  });

  it('leaves nothing behind where the program ended before the record was saved', async () => {
    const path = await bundleOf(record());
    const there = await computer('receiver');
    const { manifestSha256 } = await check(there, path);
    const copies = there.store.capturesFolder(record().id);
    await worker.keep({ path, name: 'van', manifestSha256, folder: copies });
    expect(existsSync(join(copies, CAPTURE_SHA))).toBe(true);
    const again = await computer('receiver');
    expect(existsSync(join(copies, CAPTURE_SHA))).toBe(false);
    await take(again, path);
    await computer('receiver');
    expect(existsSync(join(copies, CAPTURE_SHA)), 'of a vehicle that is there').toBe(true);
  });
});

describe('T-PRIV-1: what was left out of a record', () => {
  it('is in no file of the bundle', async () => {
    const identity = { ...record().identity, plate: 'PLATECANARY', customer: 'CUSTOMERCANARY' };
    const path = await bundleOf(withoutPrivate({ ...record(), identity }, NOTHING_PRIVATE));
    const there = await computer('receiver');
    await take(there, path);
    expect(JSON.stringify(await kept(there, record().id))).not.toMatch(/CANARY/);
  });
});

describe('a bundle that cannot be packed', () => {
  const wish = { suggestedName: 'van', record: record(), sheet: '', captureIds: ['c1'] };

  it('says which capture is not found, before anything is asked', async () => {
    const sender = await computer('sender');
    vi.mocked(dialog.showSaveDialog).mockClear();
    const { exported } = await exportBundle(sender, wish);
    expect(exported?.problem).toMatchObject({ id: 'bundle.captureMissing', where: 'van-before.csv' });
    expect(dialog.showSaveDialog).not.toHaveBeenCalled();
  });

  it('says so where it would be too large, before anything is asked', async () => {
    const sender = await computer('sender');
    const [known] = Object.values(record().captures);
    if (known === undefined) throw new Error('no capture');
    const large = { ...record(), captures: { c1: { ...known, bytes: 600_000_000 } } };
    vi.mocked(dialog.showSaveDialog).mockClear();
    const { exported } = await exportBundle(sender, { ...wish, record: large });
    expect(exported?.problem).toMatchObject({ id: 'bundle.tooLarge' });
    expect(dialog.showSaveDialog).not.toHaveBeenCalled();
  });

  it('says which capture has changed, and writes nothing', async () => {
    const sender = await computer('sender');
    await sender.library.remember((await sender.library.pick(capture)).token, CAPTURE_SHA);
    writeFileSync(capture, 'something else');
    const path = join(folder, 'never.tailtrace-bundle');
    vi.mocked(dialog.showSaveDialog).mockResolvedValue({ canceled: false, filePath: path });
    const { exported, manifestSha256 } = await exportBundle(sender, wish);
    expect(exported?.problem).toMatchObject({ id: 'bundle.captureChanged', where: 'van-before.csv' });
    expect(manifestSha256).toBeNull();
    expect(existsSync(path)).toBe(false);
  });
});
