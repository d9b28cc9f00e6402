// Gzip and zip around recordings, and what strangers pack to do harm.

import { gzipSync, strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../../../../core/reading/packed/crc32.ts';
import { readCapture } from '../../../../../core/reading/readCapture.ts';
import { bytesSource } from '../../../../support/bytesSource.ts';
import { readText, refusalOf, rowsOf } from '../../../../support/readText.ts';

const TEXT = `Time (s),RPM,O2 B1S1 (V)\n${rowsOf(400, (i, v) => `${(i / 10).toFixed(1)},${2200 + i},${v}`)}`;
const CSV = strToU8(TEXT);
const CRC_CHECK = 0xcbf43926;

async function sameAsPlain(packed: Uint8Array, warnings: readonly string[] = []): Promise<void> {
  const { capture } = await readText(packed);
  const plain = (await readText(TEXT)).capture;
  expect(capture.channels).toEqual(plain.channels);
  expect(capture.bytes).toBe(packed.length);
  expect(capture.warnings.map(({ id }) => id)).toEqual(warnings);
}

describe('packed bytes that come in small pieces', () => {
  // Longer than what is looked at to tell what a file is, packed too: that is copied.
  const digits = (i: number) => `0.${Math.imul(i + 1, 2_654_435_761) >>> 0}${Math.imul(i + 7, 1_597_334_677) >>> 0}`;
  const long = `Time (s),RPM,O2 B1S1 (V)\n${rowsOf(30_000, (i) => `${(i / 10).toFixed(1)},2200,${digits(i)}`)}`;

  it.each([100, 777])('of %i are read alike, though each lies in the place of the one before', async (chunkBytes) => {
    const bytes = strToU8(long);
    const plain = (await readText(long)).capture.channels;
    const named = { filename: 'a long name that the header of a member may carry.csv' };
    for (const packed of [
      gzipSync(bytes, named),
      zipSync({ 'drive.csv': bytes }),
      zipSync({ 'drive.csv': [bytes, { level: 0 }] }),
    ]) {
      expect(packed.length).toBeGreaterThan(300_000);
      const outcome = await readCapture(bytesSource('drive.csv', packed, chunkBytes), { choice: null });
      if (!outcome.ok) throw new Error(outcome.problem.what);
      expect(outcome.value.capture.channels).toEqual(plain);
    }
  });
});

describe('a recording in gzip', () => {
  it('is read as it is without', async () => {
    await sameAsPlain(gzipSync(CSV));
    await sameAsPlain(gzipSync(CSV, { level: 0 }));
  });

  it('may have several members', async () => {
    const half = CSV.length >> 1;
    await sameAsPlain(Uint8Array.of(...gzipSync(CSV.subarray(0, half)), ...gzipSync(CSV.subarray(half))));
  });

  it('that was cut off gives what is there, and says so', async () => {
    const packed = gzipSync(CSV);
    const { capture } = await readText(packed.subarray(0, Math.floor(packed.length * 0.6)));
    expect(capture.rows).toBeGreaterThan(50);
    expect(capture.rows).toBeLessThan(400);
    expect(capture.warnings[0]).toMatchObject({ id: 'truncated' });
  });

  it('that was damaged is refused, wherever the damage is', async () => {
    const packed = gzipSync(CSV);
    for (let at = 20; at < packed.length; at += Math.floor(packed.length / 12)) {
      const spoiled = packed.slice();
      spoiled[at] = (spoiled[at] ?? 0) ^ 0x55;
      expect((await refusalOf(spoiled)).id).toMatch(/^(damaged|unreadable|noNumbers|notText)$/);
    }
  });

  it('of several members is refused where one does not fit to its check sum or its length', async () => {
    const half = CSV.length >> 1;
    const members = [gzipSync(CSV.subarray(0, half)), gzipSync(CSV.subarray(half))] as const;
    const first = members[0].length;
    // CRC32 and ISIZE are the last eight bytes of a member (RFC 1952, 2.3.1).
    for (const at of [first - 8, first - 4, first + members[1].length - 8, first + members[1].length - 1]) {
      const spoiled = Uint8Array.of(...members[0], ...members[1]);
      spoiled[at] = (spoiled[at] ?? 0) ^ 0x55;
      expect(await refusalOf(spoiled)).toMatchObject({ id: 'damaged', where: 'drive.csv' });
    }
  });

  // GNU gzip manual, "Using gzip on tapes": zeros behind the last member are passed over.
  it.each([1, 3, 4, 512, 5000])('may be filled up with %i zeros', async (zeros) => {
    await sameAsPlain(Uint8Array.of(...gzipSync(CSV), ...new Uint8Array(zeros)));
  });

  it('whose length is cut off has all its values, and says what is missing', async () => {
    const packed = gzipSync(CSV);
    for (const missing of [1, 4]) await sameAsPlain(packed.subarray(0, packed.length - missing), ['truncated']);
  });

  it('inside gzip is refused: one layer is taken off', async () => {
    expect(await refusalOf(gzipSync(gzipSync(CSV)))).toMatchObject({ id: 'nested', where: 'drive.csv' });
    expect(await refusalOf(gzipSync(zipSync({ 'a.csv': CSV })))).toMatchObject({ id: 'nested' });
  });

  it('of nothing is refused', async () => {
    expect((await refusalOf(gzipSync(new Uint8Array(0)))).id).toBe('unreadable');
  });
});

describe('a recording in zip', () => {
  it('is read as it is without, packed or stored', async () => {
    await sameAsPlain(zipSync({ 'drive.csv': CSV }));
    await sameAsPlain(zipSync({ 'drive.csv': CSV }, { level: 0 }));
  });

  it('is found among pictures, notes and what one system leaves for itself', async () => {
    await sameAsPlain(
      zipSync({
        'readme.md': strToU8('1,2,3'),
        'photo.png': strToU8('x'),
        '__MACOSX/._drive.csv': strToU8('y'),
        'data/drive.csv': CSV,
      }),
    );
  });

  it('is not what explains it: a text called read-me comes first in many archives', async () => {
    const readMe = strToU8('The recordings of a drive.\nSee drive.csv.\n');
    await sameAsPlain(zipSync({ 'ReadMe.txt': readMe, 'drive.csv': CSV }));
  });

  it('is named with its folders, of which two may hold files of one name', async () => {
    const { capture } = await readText(zipSync({ 'bank1/log.csv': CSV, 'bank2/log.csv': CSV }));
    expect(capture.warnings[0]?.detail).toContain('(bank2/log.csv); only bank1/log.csv was read');
  });

  it('behind a password is refused as such', async () => {
    const locked = zipSync({ 'drive.csv': CSV });
    // General purpose bit flag of the local file header, bit 0 (APPNOTE.TXT 4.4.4).
    locked[6] = (locked[6] ?? 0) | 1;
    const problem = await refusalOf(locked);
    expect(problem).toMatchObject({ id: 'archive', where: 'drive.csv' });
    expect(problem.what).toContain('password');
  });

  it('is the first of several, and the others are named', async () => {
    const { capture } = await readText(zipSync({ 'a.csv': CSV, 'b/c.csv': strToU8('1,2\n') }));
    expect(capture.warnings[0]).toMatchObject({ id: 'other', count: 1 });
    expect(capture.warnings[0]?.detail).toBe('The archive holds one more recording (b/c.csv); only a.csv was read.');
  });

  it.each([
    '../../evil.csv',
    '..\\evil.csv',
    '/etc/passwd',
    'C:\\drive.csv',
    'CON',
    'a\u0000b.csv',
    `${'x'.repeat(300)}.csv`,
  ])('may have any name: %s is shown at most', async (name) => {
    const { capture } = await readText(zipSync({ [name]: CSV }));
    expect(capture.name).toBe('drive.csv');
    expect(capture.rows).toBe(400);
  });

  it('that holds none is refused', async () => {
    expect(await refusalOf(zipSync({ 'readme.md': CSV, 'folder/': new Uint8Array(0) }))).toMatchObject({
      id: 'archive',
    });
    expect(await refusalOf(zipSync({}))).toMatchObject({ id: 'archive' });
  });

  it('that is a spreadsheet says to save it as CSV', async () => {
    for (const entry of ['[Content_Types].xml', 'xl/workbook.xml', 'mimetype']) {
      const problem = await refusalOf(zipSync({ [entry]: strToU8('<x/>'), 'other.csv': CSV }));
      expect(problem).toMatchObject({ id: 'spreadsheet' });
      expect(problem.doNext).toContain('save it as CSV');
    }
  });

  it('that was cut off gives what is there, and says so', async () => {
    const packed = zipSync({ 'drive.csv': CSV });
    const { capture } = await readText(packed.subarray(0, Math.floor(packed.length * 0.6)));
    expect(capture.rows).toBeGreaterThan(50);
    expect(capture.warnings.map(({ id }) => id)).toContain('truncated');
  });

  it('that was damaged inside the recording is refused, stored too, where every byte is still a number', async () => {
    for (const level of [0, 6] as const) {
      const packed = zipSync({ 'größe.csv': CSV, 'readme.md': strToU8('x') }, { level });
      const digit = strToU8('2300');
      const at = packed.findIndex((_, i) => digit.every((byte, k) => packed[i + k] === byte));
      const spoiled = packed.slice();
      const place = level === 0 ? at : 400;
      spoiled[place] = level === 0 ? 51 : (spoiled[place] ?? 0) ^ 1;
      expect(await refusalOf(spoiled)).toMatchObject({ id: 'damaged', where: 'drive.csv' });
    }
  });

  it('that holds another zip is refused', async () => {
    expect((await refusalOf(zipSync({ 'inner.dat': zipSync({ 'a.csv': CSV }) }))).id).toBe('nested');
  });
});

describe('archives written by another program', () => {
  // Made by Python 3: gzip.compress of the two halves of the text, one after the other; and zipfile into a stream that
  // cannot seek, so that sizes and check sum stand behind the entry (general purpose bit 3 of APPNOTE.TXT).
  const rows = Array.from({ length: 60 }, (_, i) => `${(i / 10).toFixed(1)},${2200 + (i % 7)}\n`);
  const text = `Time (s),RPM\n${rows.join('')}`;
  const GZIP =
    'H4sIAAAAAAACAzXMMQoCQRBE0dxTGCos0tW9PTN7CEHEKxgYGHl/sJqis5f8//p83+fL77o9H/eT3WxzNyNQAOEFJ6IQxF7Y' +
    'iSwkMQqDmJ2vzg/l0DkIKIfOSYRy6GxEKofOlc/OV+eHctd5EFDuOoMI5a5zEKncda58dr46/wMneTwVFAEAAB+LCAAAAAAA' +
    'AgM1zLkNwEAMA8HctRiGPt7Tf2OmQCjbZPa+EeZPftYRDO9IRnQUIzvAqI7FQIcx1vA9/Ay/4qUzGC5eOhsjxUvnYEC8dG6+' +
    'h5/hVxw6O8PFoXMyUhw6gwFx6Nx8Dz/Dr/gPvjn/SBUBAAA=';
  const ZIP =
    'UEsDBBQACAAIAAAAIQAAAAAAAAAAAAAAAAAJAAAAZHJpdmUuY3N2NcwxaoNBDAXhPqdwmYAJK2n17+4hAiHkCilcuPL9IU8M' +
    '6qb55vfx/Lu9vz7uP99fb+Nz3N3HUFiFKbzCFVERilkxFVmRiqviUqzmu/mBG+dQGNw4pyLgxnkoEm6ci6/mu/mBO+dLYXDn' +
    'bIqAO+dQJNw5F1/Nd/MDD86uMHhwnoqAB+dLkfDgXHw1380PfHJOhcEn56EI+OTsioRPzsVX8938wJOzKQyenEMR8OScioQn' +
    '5+Kr+W5+4P9QSwcI+0HixbkAAAApAgAAUEsBAhQDFAAIAAgAAAAhAPtB4sW5AAAAKQIAAAkAAAAAAAAAAAAAAIABAAAAAGRy' +
    'aXZlLmNzdlBLBQYAAAAAAQABADcAAADwAAAAAAA=';

  it.each([
    ['gzip of two members', GZIP],
    ['zip with its sizes behind', ZIP],
  ])('%s is read as its text is, and refused once its check sum is another', async (_, base64) => {
    const packed = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    expect((await readText(packed)).capture.channels).toEqual((await readText(text)).capture.channels);
    // The first member's CRC32 in the one; in the other the copy that the directory holds, 16 bytes into its entry.
    const place = base64 === GZIP ? 128 : packed.length - 22 - 55 + 16;
    const spoiled = packed.slice();
    spoiled[place] = (spoiled[place] ?? 0) ^ 1;
    expect((await refusalOf(spoiled)).id).toBe('damaged');
  });
});

describe('packed files that grow beyond measure', () => {
  const rows = strToU8(`Time (s),RPM\n0.1,${'0'.repeat(50)}\n`);
  const zeros = (length: number) => {
    const bytes = new Uint8Array(length).fill(48);
    bytes.set(rows);
    for (let i = rows.length; i < length; i += 2048) bytes.set(strToU8('\n0.1,0\n'), i);
    return bytes;
  };

  it('are refused while they are unpacked, gzip and zip alike', async () => {
    const bomb = zeros(40_000_000);
    for (const packed of [gzipSync(bomb, { level: 9 }), zipSync({ 'a.csv': bomb }, { level: 9 })]) {
      // The fixture must be one that the limit is for.
      expect(bomb.length / packed.length).toBeGreaterThan(400);
      const problem = await refusalOf(packed);
      expect(problem.id).toBe('expandsTooMuch');
      expect(problem.where).toBe('drive.csv');
    }
  });

  it('are refused for the number of their files', async () => {
    const many = Object.fromEntries(Array.from({ length: 1100 }, (_, i) => [`${i}.txt`, strToU8('x')]));
    expect((await refusalOf(zipSync(many, { level: 0 }))).id).toBe('archive');
  });
});

describe('the check sum of gzip and zip', () => {
  it('has the check value of its catalogue, whole and in pieces', () => {
    const bytes = strToU8('123456789');
    expect(crc32(bytes)).toBe(CRC_CHECK);
    expect(crc32(bytes.subarray(4), crc32(bytes.subarray(0, 4)))).toBe(CRC_CHECK);
    expect(crc32(new Uint8Array(0))).toBe(0);
  });
});
