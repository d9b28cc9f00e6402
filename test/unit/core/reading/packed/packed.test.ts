// Gzip and zip around recordings, and what strangers pack to do harm.

import { gzipSync, strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../../../../core/reading/packed/crc32.ts';
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

  it('is the first of several, and the others are named', async () => {
    const { capture } = await readText(zipSync({ 'a.csv': CSV, 'b/c.csv': strToU8('1,2\n') }));
    expect(capture.warnings[0]).toMatchObject({ id: 'other', count: 1 });
    expect(capture.warnings[0]?.detail).toBe('The archive holds one more recording (c.csv); only a.csv was read.');
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

  it('that holds another zip is refused', async () => {
    expect((await refusalOf(zipSync({ 'inner.dat': zipSync({ 'a.csv': CSV }) }))).id).toBe('nested');
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
