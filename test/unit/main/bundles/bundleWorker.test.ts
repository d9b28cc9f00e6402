import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { canonicalJson } from '../../../../core/record/canonical.ts';
import type { VehicleRecord } from '../../../../core/record/schema.ts';
import { LARGEST_BUNDLE_FILE, tooLarge } from '../../../../main/bundles/bundleSizes.ts';
import type { BundleWorker } from '../../../../main/bundles/bundleWorker.ts';
import { isBundleFile } from '../../../../main/bundles/isBundleFile.ts';
import { bundleWorkerIn } from '../../../support/bundleThread.ts';
import { keptRecord } from '../../../support/keptRecord.ts';

const VALUES = join(import.meta.dirname, '../../../reference/values');
const MADE_AT = '2026-11-24T15:30:00+01:00';
const CAPTURE = 'Time,O2S B1S1\n0,0.45\n0.1,0.80\n';
const sha256 = (bytes: string | Uint8Array) => createHash('sha256').update(bytes).digest('hex');

let folder = '';
let worker: BundleWorker;
let capture = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tailtrace-worker-'));
  worker = await bundleWorkerIn(folder);
  capture = join(folder, 'van-before.csv');
  writeFileSync(capture, CAPTURE);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The kept record, naming the capture of this test. */
function record(): VehicleRecord {
  const kept = keptRecord();
  const [known] = Object.values(kept.captures);
  if (known === undefined) throw new Error('The kept record names no capture.');
  return { ...kept, captures: { c1: { ...known, id: 'c1', name: 'van-before.csv', sha256: sha256(CAPTURE) } } };
}

const placed = (path: string) => [{ captureId: 'c1', name: 'van-before.csv', sha256: sha256(CAPTURE), path }];

async function packed(): Promise<{ path: string; manifestSha256: string }> {
  const made = await worker.pack({
    record: record(),
    sheet: '<p>sheet</p>',
    captures: placed(capture),
    madeAt: MADE_AT,
  });
  if (!made.ok) throw new Error(made.problem.what);
  const path = join(folder, 'van.tailtrace-bundle');
  writeFileSync(path, made.value.bytes);
  return { path, manifestSha256: made.value.manifestSha256 };
}

describe('a bundle, packed and opened apart from the shell', () => {
  it('comes back as it was made, its captures byte for byte', async () => {
    const { path, manifestSha256 } = await packed();
    const opened = await worker.open(path, 'van.tailtrace-bundle');
    if (!opened.ok) throw new Error(opened.problem.what);
    expect(canonicalJson(opened.value.record)).toBe(canonicalJson(record()));
    expect(opened.value).toMatchObject({ manifestSha256, otherCore: null, fileSha256: sha256(readFileSync(path)) });
    expect(opened.value.manifest.madeAt).toBe(MADE_AT);
    const copies = join(folder, 'copies', 'of a vehicle');
    const wish = { path, name: 'van.tailtrace-bundle', manifestSha256, folder: copies };
    expect(await worker.keep(wish)).toEqual({ ok: true, value: null });
    const copy = join(copies, sha256(CAPTURE));
    expect(readFileSync(copy, 'utf8')).toBe(CAPTURE);
    expect(statSync(copy).mode & 0o777).toBe(0o400);
    expect(await worker.keep(wish), 'once more').toEqual({ ok: true, value: null });
  });

  it('is refused with the names of captures that are no longer what was recorded', async () => {
    const changed = join(folder, 'changed.csv');
    writeFileSync(changed, `${CAPTURE}0.2,0.1\n`);
    const made = await worker.pack({ record: record(), sheet: '', captures: placed(changed), madeAt: MADE_AT });
    expect(made).toMatchObject({ ok: false, problem: { id: 'bundle.captureChanged', where: 'van-before.csv' } });
  });

  it('keeps nothing of a bundle that is not the one that was looked at', async () => {
    const { path } = await packed();
    const wish = { path, name: 'van', manifestSha256: 'ab'.repeat(32), folder: join(folder, 'nothing') };
    expect(await worker.keep(wish)).toMatchObject({ ok: false, problem: { id: 'changedWhileRead' } });
    expect(() => statSync(join(folder, 'nothing'))).toThrow('ENOENT');
  });

  it('is refused where it was changed, with the name of the file', async () => {
    const { path } = await packed();
    const bytes = readFileSync(path);
    const text = bytes.indexOf('<p>sheet</p>');
    const at = text >= 0 ? text : bytes.indexOf('sheet.html') + 'sheet.html'.length + 4;
    const changed = join(folder, 'changed.tailtrace-bundle');
    writeFileSync(
      changed,
      bytes.map((byte, i) => (i === at ? byte ^ 1 : byte)),
    );
    const opened = await worker.open(changed, 'changed.tailtrace-bundle');
    expect(opened.ok ? '' : opened.problem.what).toContain('sheet.html');
  });

  it('says of a file that is gone, or a folder, what to do', async () => {
    expect(await worker.open(join(folder, 'gone'), 'gone')).toMatchObject({
      ok: false,
      problem: { id: 'notRead.ENOENT' },
    });
    expect(await worker.open(folder, 'folder')).toMatchObject({ ok: false, problem: { id: 'notRead.EISDIR' } });
  });

  it('can be called off, and says so', async () => {
    const { path } = await packed();
    const opening = worker.open(path, 'van');
    worker.cancel();
    expect(await opening).toMatchObject({ ok: false, problem: { id: 'cancelled' } });
  });
});

describe('captures looked through before they are packed', () => {
  const weigh = async (path: string | null, sum = sha256(CAPTURE)) => {
    const weighed = await worker.weigh([{ captureId: 'c1', name: 'van.csv', sha256: sum, path }]);
    return weighed.ok ? weighed.value[0] : null;
  };

  it('are ready, gone, changed, or cannot be read', async () => {
    expect(await weigh(capture)).toEqual({ captureId: 'c1', state: 'ready', vehicleNumbers: 0 });
    expect(await weigh(null)).toMatchObject({ state: 'notFound' });
    expect(await weigh(capture, 'ab'.repeat(32))).toMatchObject({ state: 'changed' });
    expect(await weigh(folder)).toMatchObject({ state: 'unread' });
  });

  // T-PRIV-3; the number is invented.
  it.each([
    ['a header line', 'Vehicle: AB1CDEFGHJK123456\nTime,O2\n0,0.45\n', 1],
    ['the same number twice', 'AB1CDEFGHJK123456;AB1CDEFGHJK123456\n', 1],
    ['UTF-16', Buffer.from('VIN AB1CDEFGHJK123456\n', 'utf16le'), 1],
    ['long numbers only', 'Time,O2\n0.10000000000000001,0.45000000000000001\n11111111111111111\n', 0],
    ['longer words', 'XAB1CDEFGHJK123456\nAB1CDEFGHJK1234567\n', 0],
    ['a file that ends with it', 'Time,O2\n0,0.45\nAB1CDEFGHJK123456', 1],
    ['a packed file', gzipSync('Vehicle: AB1CDEFGHJK123456\nTime,O2\n0,0.45\n'), 1],
    ['an archive', zipSync({ 'van.csv': Buffer.from('Vehicle: AB1CDEFGHJK123456\nTime,O2\n0,0.45\n') }), 1],
    ['answers of the connector', readFileSync(join(VALUES, 'socketcan.log')), 1],
    ['a packed log', gzipSync(readFileSync(join(VALUES, 'socketcan.log'))), 1],
  ] as const)('tell of vehicle numbers in %s', async (_, content, count) => {
    const path = join(folder, 'numbered.csv');
    writeFileSync(path, content);
    expect(await weigh(path, sha256(content))).toEqual({ captureId: 'c1', state: 'ready', vehicleNumbers: count });
  });

  it('tell of a number across the seam of two pieces', async () => {
    const content = `${' '.repeat(8 * 1024 * 1024 - 5)}AB1CDEFGHJK123456 \n`;
    const path = join(folder, 'long.csv');
    writeFileSync(path, content);
    expect(await weigh(path, sha256(content))).toMatchObject({ vehicleNumbers: 1 });
  });
});

describe('a bundle among other files', () => {
  it('is known by what it holds, or by its ending', async () => {
    const { path } = await packed();
    const renamed = join(folder, 'van.zip');
    writeFileSync(renamed, readFileSync(path));
    expect(await isBundleFile(path, 'van.tailtrace-bundle')).toBe(true);
    expect(await isBundleFile(renamed, 'van.zip')).toBe(true);
    expect(await isBundleFile(capture, 'van-before.csv')).toBe(false);
    const zipped = join(folder, 'capture.zip');
    writeFileSync(zipped, zipSync({ 'van-before.csv': Buffer.from(CAPTURE) }));
    expect(await isBundleFile(zipped, 'capture.zip')).toBe(false);
    expect(await isBundleFile(join(folder, 'gone.tailtrace-bundle'), 'gone.tailtrace-bundle')).toBe(false);
    mkdirSync(join(folder, 'a.tailtrace-bundle'));
    expect(await isBundleFile(join(folder, 'a.tailtrace-bundle'), 'a.tailtrace-bundle')).toBe(false);
  });

  it('may hold 512 MiB and is refused beyond, with the amounts', () => {
    expect(tooLarge(536_870_912)).toBeNull();
    expect(tooLarge(536_870_913)).toMatchObject({ id: 'bundle.tooLarge' });
    expect(tooLarge(734_000_001)?.what).toContain('735 MB, and a bundle holds 537 MB');
    expect(LARGEST_BUNDLE_FILE).toBeGreaterThan(536_870_912);
  });
});
