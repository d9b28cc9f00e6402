// Files that are no recordings: each is refused in one sentence, with the file's name and what to do.

import { describe, expect, it } from 'vitest';
import { problemLine } from '../../../../core/reading/problem.ts';
import { readText, refusalOf, rowsOf } from '../../../support/readText.ts';

const bytes = (...start: number[]) => Uint8Array.from({ length: 400 }, (_, i) => start[i] ?? (i * 37) % 256);
const letters = (text: string) => bytes(...Array.from(text, (letter) => letter.charCodeAt(0)));

const REFUSED: readonly (readonly [string, string | Uint8Array, string])[] = [
  ['an empty file', '', 'empty'],
  ['blanks and line ends', ' \n\n  \r\n', 'empty'],
  ['a PNG', bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a), 'picture'],
  ['a JPEG', bytes(0xff, 0xd8, 0xff, 0xe0), 'picture'],
  ['a bitmap', letters('BM\u0001\u0002'), 'picture'],
  ['a PDF', letters('%PDF-1.7'), 'document'],
  ['an old office document', bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1), 'spreadsheet'],
  ['a video', letters('\u0000\u0000\u0000\u0018ftypmp42'), 'video'],
  ['a program', letters('MZ\u0001\u0002'), 'program'],
  ['an archive of another kind', bytes(0x37, 0x7a, 0xbc, 0xaf, 0x27, 0x1c), 'archive'],
  ['a Parquet table', letters('PAR1\u0015\u0004'), 'columns'],
  ['an HDF5 file', bytes(0x89, 0x48, 0x44, 0x46, 0x0d, 0x0a, 0x1a, 0x0a), 'columns'],
  ['a file of matrices', letters(`${'MATLAB 5.0 MAT-file'.padEnd(124)}\u0000\u0001IM`), 'columns'],
  ['an array file', bytes(0x93, 0x4e, 0x55, 0x4d, 0x50, 0x59, 1, 0), 'columns'],
  ['a tar archive', letters(`${'drive.csv'.padEnd(257, '\u0000')}ustar\u0000`), 'archive'],
  ['a measurement file of version 3', letters('MDF     3.30    '), 'unreadable'],
  ['random bytes', bytes(1, 2, 3, 4, 5, 6, 7, 8), 'notText'],
  ['a letter', 'Dear customer,\nyour car is ready.\nYours,\nthe workshop\n', 'noNumbers'],
  ['a page', '<!DOCTYPE html><html><body>1,2,3</body></html>', 'markup'],
  ['a JSON document', '{"a":[1,2,3]}', 'markup'],
  ['one number', '42\n', 'noNumbers'],
  ['a header and nothing else', 'Time (s),RPM,O2 B1S1\n', 'headerOnly'],
  ['a header with units and nothing else', 'Time,RPM,O2 B1S1\ns,1/min,V\n', 'headerOnly'],
  ['only times', `Time (s)\n${rowsOf(30, (i) => String(i))}`, 'noChannels'],
  ['a hundred thousand columns', `${Array.from({ length: 100_000 }, (_, i) => i).join(',')}\n1,2\n`, 'tooManyColumns'],
  [
    'five thousand columns of data',
    `${Array.from({ length: 5000 }, (_, i) => `c${i}`).join(';')}\n${Array.from({ length: 5000 }, (_, i) => i).join(';')}\n`,
    'tooManyColumns',
  ],
  ['a line that never ends', 'x'.repeat(400_000), 'lineTooLong'],
];

describe('files that are refused', () => {
  it.each(REFUSED)('%s', async (_, content, id) => {
    const problem = await refusalOf(content);
    expect(problem.id).toBe(id);
    expect(problem.where).toMatch(/^drive\.csv/);
    expect(problem.what).toMatch(/^[A-Z].*\.$/);
    expect(problem.doNext).toMatch(/^[A-Z].*\.$/);
    expect(problemLine(problem)).not.toMatch(/undefined|NaN|null|\n/);
  });

  it('a text that begins with the letters of a bitmap or a program is read', async () => {
    for (const heading of ['BM', 'MZ']) {
      const { capture } = await readText(`${heading},Time (s)\n${rowsOf(30, (i) => `${800 + i},${i / 10}`)}`);
      expect(capture.channels[0]?.name).toBe(heading);
    }
  });

  it('what memory cannot hold is refused before it is read, with the numbers', async () => {
    const text = `Time (s),RPM,O2\n${rowsOf(20_000, (i, v) => `${i / 10},${800 + i},${v}`)}`;
    const problem = await refusalOf(text, { memoryBytes: 100_000 });
    expect(problem).toMatchObject({ id: 'tooLarge' });
    expect(problem.what).toMatch(/about \d+ MB/);
    await readText(text, { memoryBytes: 10_000_000 });
  });

  it('what turns out too large while it is read is refused then', async () => {
    const text = `time;name;value\n${rowsOf(30_000, (i, v) => `${i / 10};O2 B1S1;${v}`)}`;
    expect(await refusalOf(text, { memoryBytes: 100_000 })).toMatchObject({ id: 'tooLarge' });
  });
});

describe('files that look strange and are read', () => {
  it.each([
    [
      'zeros at the end, as power failures leave them',
      `Time (s),RPM\n${rowsOf(200, (i) => `${i / 10},${800 + i}`)}${'\u0000'.repeat(5)}`,
    ],
    ['a stray quote', `Time (s),RPM\n${rowsOf(200, (i) => `${i / 10},${i === 50 ? '"' : ''}${800 + i}`)}`],
    [
      'two stray quotes far apart',
      `Time (s),RPM\n${rowsOf(200, (i) => `${i / 10},${i === 50 || i === 150 ? '"' : ''}${800 + i}`)}`,
    ],
    ['a quote that never closes in the last row', `Time (s),RPM\n${rowsOf(200, (i) => `${i / 10},${800 + i}`)}20,"1`],
  ])('%s', async (_, text) => {
    const { capture } = await readText(text);
    expect(capture.rows).toBeGreaterThanOrEqual(199);
    expect(capture.channels[0]?.facts.finite).toBeGreaterThanOrEqual(198);
  });
});
