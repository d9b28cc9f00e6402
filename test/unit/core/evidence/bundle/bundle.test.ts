// T-EV-1, T-EV-2, T-OPEN-3, T-OPEN-4, T-OPEN-11: bundles for a second opinion.

import { createHash } from 'node:crypto';
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { BUNDLE_TAIL_BYTES, looksLikeBundle } from '../../../../../core/evidence/bundle/looksLikeBundle.ts';
import { BUNDLE_VERSION } from '../../../../../core/evidence/bundle/manifest.ts';
import { readBundle } from '../../../../../core/evidence/bundle/readBundle.ts';
import { unpackBundle } from '../../../../../core/evidence/bundle/unpackBundle.ts';
import { writeBundle } from '../../../../../core/evidence/bundle/writeBundle.ts';
import { canonicalJson } from '../../../../../core/record/canonical.ts';
import { RECORD_VERSION, type VehicleRecord } from '../../../../../core/record/schema.ts';
import { CORE_VERSION } from '../../../../../core/version.ts';
import { vehicleRecord } from '../../../../property/recordArbitraries.ts';
import { keptRecord } from '../../../../support/keptRecord.ts';

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const here = { sha256, coreVersion: CORE_VERSION };
const noise = (length: number, seed: string) =>
  Uint8Array.from(
    { length },
    (_, i) =>
      createHash('sha256')
        .update(`${seed}${i >> 5}`)
        .digest()[i & 31] ?? 0,
  );

const captures = [
  { captureId: 'c1', name: 'van-before.csv', bytes: new TextEncoder().encode('time,o2\n0,0.45\n'.repeat(300)) },
  { captureId: 'c2', name: '../../evil\u202e.csv', bytes: noise(3000, 'c2') },
];
const contents = {
  record: recordOf(captures),
  sheet: `<!doctype html>\n<p>${'evidence '.repeat(400)}</p>\n`,
  captures,
  madeAt: '2026-11-24T15:30:00+01:00',
  coreVersion: CORE_VERSION,
};
const written = await writeBundle(contents, sha256);
const entries = unzipSync(written.bytes);

/** The kept record, made to name these captures. */
function recordOf(files: typeof captures): VehicleRecord {
  const record = keptRecord();
  const [known] = Object.values(record.captures);
  if (known === undefined) throw new Error('The kept record names no capture.');
  const named = files.map(({ captureId, name, bytes }) => [
    captureId,
    { ...known, id: captureId, name, bytes: bytes.length, sha256: sha256(bytes) },
  ]);
  return { ...record, captures: Object.fromEntries(named) };
}

/** A bundle of the same entries with some of them put in place, added or (null) taken out. */
function repacked(changed: Readonly<Record<string, Uint8Array | null>>): Uint8Array {
  const files = Object.entries({ ...entries, ...changed }).filter(
    (file): file is [string, Uint8Array] => file[1] !== null,
  );
  return zipSync(Object.fromEntries(files), { level: 0, mtime: new Date(1980, 0, 1) });
}

async function refusalOf(bytes: Uint8Array): Promise<string | null> {
  const read = await readBundle(bytes, 'van.zip', here);
  return read.ok ? null : read.problem.what;
}

describe('a bundle', () => {
  test('comes back as it was made', async () => {
    const read = await readBundle(written.bytes, 'van.zip', here);
    if (!read.ok) throw new Error(read.problem.what);
    expect(read.value.record).toEqual(contents.record);
    expect(read.value.sheet).toBe(contents.sheet);
    expect(read.value.captures).toEqual(contents.captures);
    expect(read.value.manifestSha256).toBe(written.manifestSha256);
    expect(read.value.otherCore).toBeNull();
  });

  test('T-OPEN-11: 300 records come back equal in canonical JSON', async () => {
    await fc.assert(
      fc.asyncProperty(vehicleRecord, async (record) => {
        const { bytes } = await writeBundle({ ...contents, record, captures: [] }, sha256);
        const read = await readBundle(bytes, 'x', here);
        expect(read.ok && canonicalJson(read.value.record)).toBe(canonicalJson(record));
      }),
      { numRuns: 300 },
    );
  });

  test('T-EV-1: the same contents give the same bytes, whatever the order of the record’s keys', async () => {
    const turned = Object.fromEntries(Object.entries(contents.record).reverse());
    const again = await writeBundle({ ...contents, record: { ...contents.record, ...turned } }, sha256);
    expect(sha256(again.bytes)).toBe(sha256(written.bytes));
  });

  test('holds only names that a manifest may hold; people’s names stand in the manifest', () => {
    expect(Object.keys(entries)).toEqual([
      'manifest.json',
      'manifest.sha256',
      'record.json',
      'sheet.html',
      'capture-1',
      'capture-2',
    ]);
    expect(written.manifest.captures[1]?.name).toBe('../../evil\u202e.csv');
  });

  test('is told from a capture by what it holds, or by its ending', () => {
    const tail = (bytes: Uint8Array) => bytes.subarray(-BUNDLE_TAIL_BYTES);
    expect(looksLikeBundle('van.zip', tail(written.bytes))).toBe(true);
    expect(looksLikeBundle('van.tailtrace-bundle', new Uint8Array([1, 2, 3]))).toBe(true);
    const capture = new TextEncoder().encode('time,o2\n0,0.45\n');
    expect(looksLikeBundle('drive.csv', capture)).toBe(false);
    expect(looksLikeBundle('drive.zip', zipSync({ 'drive.csv': capture, 'manifest.json': capture }))).toBe(false);
    expect(looksLikeBundle('drive.csv', new Uint8Array(0))).toBe(false);
  });

  test('with a capture that the record does not name, or names with another hash, is refused by its name', async () => {
    const [first] = captures;
    if (first === undefined) throw new Error('no capture');
    const foreign = [{ ...first, captureId: 'c9' }];
    const exchanged = [{ ...first, captureId: 'c2' }];
    for (const files of [foreign, exchanged]) {
      const { bytes } = await writeBundle({ ...contents, captures: files }, sha256);
      expect(await refusalOf(bytes)).toContain('van-before.csv is not the capture that the record names');
    }
  });

  test('of a newer version is refused in words: its record, or the bundle itself', async () => {
    const newer = { ...contents.record, version: RECORD_VERSION + 1, laterField: 1 };
    const canonical = new TextEncoder().encode(canonicalJson(newer));
    const record = { ...written.manifest.record, bytes: canonical.length, sha256: sha256(canonical) };
    const manifest = { ...written.manifest, record, recordCanonicalSha256: record.sha256 };
    const whole = (made: unknown, recordBytes: Uint8Array) => {
      const text = canonicalJson(made);
      return repacked({
        'manifest.json': new TextEncoder().encode(text),
        'manifest.sha256': new TextEncoder().encode(`${sha256(new TextEncoder().encode(text))}\n`),
        'record.json': recordBytes,
      });
    };
    const told = 'A newer version of Tailtrace made this bundle';
    expect(await refusalOf(whole(manifest, canonical))).toContain(told);
    const later = { ...written.manifest, version: BUNDLE_VERSION + 1, more: [] };
    expect(await refusalOf(whole(later, entries['record.json'] ?? new Uint8Array(0)))).toContain(told);
  });

  test('another version of the core is told', async () => {
    const { bytes } = await writeBundle({ ...contents, coreVersion: '0.0.9' }, sha256);
    const read = await readBundle(bytes, 'x', here);
    expect(read.ok && read.value.otherCore).toBe('0.0.9');
  });

  test('a time stamp can be put in afterwards without changing the manifest’s hash', async () => {
    const stamped = { ...written.manifest, timeStamp: 'AAAA' };
    const read = await readBundle(
      repacked({ 'manifest.json': new TextEncoder().encode(canonicalJson(stamped)) }),
      'x',
      here,
    );
    expect(read.ok && read.value.manifestSha256).toBe(written.manifestSha256);
  });
});

describe('T-EV-2: any change is found, and the file is named', () => {
  const flipped = (bytes: Uint8Array, at: number) => bytes.map((byte, i) => (i === at ? byte ^ 1 : byte));

  test.each([['manifest.json'], ['manifest.sha256'], ['record.json']] as const)('every byte of %s', async (name) => {
    const bytes = entries[name] ?? new Uint8Array(0);
    for (let at = 0; at < bytes.length; at++) {
      const what = await refusalOf(repacked({ [name]: flipped(bytes, at) }));
      expect(what, `byte ${at}`).not.toBeNull();
      if (name === 'record.json') expect(what).toContain('record.json was changed');
    }
  });

  test('2000 bytes of captures and sheet', async () => {
    const place = fc.tuple(
      fc.constantFrom('sheet.html', 'capture-1', 'capture-2'),
      fc.nat(),
      fc.integer({ min: 1, max: 255 }),
    );
    const people: Record<string, string> = {
      'sheet.html': 'sheet.html',
      'capture-1': 'van-before.csv',
      'capture-2': '../../evil‹U+202E›.csv',
    };
    await fc.assert(
      fc.asyncProperty(place, async ([name, at, by]) => {
        const bytes = entries[name] ?? new Uint8Array(1);
        const changed = bytes.map((byte, i) => (i === at % bytes.length ? byte ^ by : byte));
        expect(await refusalOf(repacked({ [name]: changed }))).toContain(`${people[name]} was changed`);
      }),
      { numRuns: 2000 },
    );
  });

  test('cut, lengthened, exchanged, added, removed', async () => {
    const one = entries['capture-1'] ?? new Uint8Array(0);
    const two = entries['capture-2'] ?? new Uint8Array(0);
    expect(await refusalOf(repacked({ 'capture-1': one.subarray(0, -1) }))).toContain('van-before.csv was changed');
    expect(await refusalOf(repacked({ 'capture-1': new Uint8Array([...one, 0]) }))).toContain(
      'van-before.csv was changed',
    );
    const swapped = await refusalOf(repacked({ 'capture-1': two, 'capture-2': one }));
    expect(swapped).toContain('van-before.csv was changed');
    expect(swapped).toContain('evil‹U+202E›.csv was changed');
    expect(await refusalOf(repacked({ 'capture-3': one }))).toContain('capture-3 is not listed');
    expect(await refusalOf(repacked({ 'capture-2': null }))).toContain('evil‹U+202E›.csv is missing');
    expect(await refusalOf(repacked({ 'sheet.html': null }))).toContain('sheet.html is missing');
    expect(await refusalOf(repacked({ 'manifest.json': null }))).toContain('no manifest');
  });

  test('a byte of the archive itself, at any place: refused, or nothing of what it holds is different', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat({ max: written.bytes.length - 1 }), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const read = await readBundle(
          written.bytes.map((byte, i) => (i === at ? byte ^ by : byte)),
          'x',
          here,
        );
        if (!read.ok) return;
        expect(read.value.record).toEqual(contents.record);
        expect(read.value.captures).toEqual(contents.captures);
        expect(read.value.manifestSha256).toBe(written.manifestSha256);
      }),
      { numRuns: 1000 },
    );
  });

  test('an archive that is damaged inside a capture names that capture', async () => {
    const head = Buffer.from(written.bytes).indexOf('capture-1');
    const at = head + 'capture-1'.length + 20;
    const what = await refusalOf(written.bytes.map((byte, i) => (i === at ? byte ^ 0xff : byte)));
    expect(what).toContain('van-before.csv');
  });

  test('an archive that is cut, or has something behind it', async () => {
    for (let length = 0; length < written.bytes.length; length += 97) {
      expect(await refusalOf(written.bytes.subarray(0, length)), `${length}`).not.toBeNull();
    }
    expect(await refusalOf(new Uint8Array([...written.bytes, 1, 2, 3]))).toContain('cut off, or something was hung on');
  });
});

describe('T-OPEN-3 and T-OPEN-4: archives that mean harm', () => {
  test.each([
    '../../evil.txt',
    '..\\evil.txt',
    '/etc/passwd',
    'C:\\evil.txt',
    '\\\\host\\share',
    'CON',
    'NUL.txt',
    'COM1',
    'capture-0',
    'capture-01',
    'capture-1000',
    'Manifest.json',
    'manifest.json ',
    'manifest.json.',
    'manifest.json\u0000',
    'sub/record.json',
    'record\u2024json',
    'récord.json',
    'x'.repeat(300),
    'folder/',
    '',
  ])('the name %j is refused', async (name) => {
    expect(await refusalOf(repacked({ [name]: new Uint8Array([1]) }))).not.toBeNull();
  });

  test('the same name twice is refused', () => {
    const twice = doubled(
      zipSync({ 'record.json': new Uint8Array([1]), 'record.jsom': new Uint8Array([2]) }, { level: 0 }),
    );
    expect(unpackBundle(twice)).toMatchObject({ ok: false, why: 'twice', entry: 'record.json' });
  });

  test('a bomb is stopped while it inflates', () => {
    const bomb = zipSync({ 'capture-1': new Uint8Array(50_000_000) });
    expect(bomb.length).toBeLessThan(100_000);
    const before = process.memoryUsage().arrayBuffers;
    expect(unpackBundle(bomb, { bytes: 1_000_000, entries: 10 })).toMatchObject({
      ok: false,
      why: 'tooLarge',
      entry: 'capture-1',
    });
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(20_000_000);
  });

  test('too many entries are refused before they are unpacked', () => {
    const many = zipSync(
      Object.fromEntries(Array.from({ length: 20 }, (_, i) => [`capture-${i + 1}`, new Uint8Array(1)])),
    );
    expect(unpackBundle(many, { bytes: 1000, entries: 10 })).toMatchObject({ ok: false, why: 'tooMany' });
  });

  test('a size that lies does not get more in', () => {
    const honest = zipSync({ 'capture-1': new Uint8Array(50_000) });
    const view = new DataView(honest.buffer, honest.byteOffset);
    view.setUint32(22, 10, true); // uncompressed size in the local header
    const read = unpackBundle(honest, { bytes: 20_000, entries: 3 });
    expect(read).toMatchObject({ ok: false, why: 'tooLarge' });
  });

  test.each([
    ['nothing', new Uint8Array(0), 'not a bundle'],
    ['text', new TextEncoder().encode('time,o2\n0,0.45\n'), 'not a bundle'],
    ['a bare deflate stream', new Uint8Array(deflateRawSync('x')), 'not a bundle'],
    ['a zip of something else', zipSync({ 'drive.csv': new Uint8Array([1]) }), '"drive.csv", which no bundle holds'],
  ])('%s is refused in words', async (_, bytes, part) => {
    expect(await refusalOf(bytes)).toContain(part);
  });

  test('no bytes make it throw', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (tail) => {
        const zip = new Uint8Array([0x50, 0x4b, 3, 4, ...tail]);
        expect(typeof (await readBundle(zip, 'x', here)).ok).toBe('boolean');
      }),
      { numRuns: 1000 },
    );
  });
});

/** Renames the second entry of an archive to the first one's name, in both of its headers. */
function doubled(bytes: Uint8Array): Uint8Array {
  const from = [...'record.jsom'].map((letter) => letter.charCodeAt(0));
  return bytes.map((byte, at) => {
    const start = at - from.length + 1;
    return start >= 0 && from.every((letter, i) => bytes[start + i] === letter) ? 'n'.charCodeAt(0) : byte;
  });
}
