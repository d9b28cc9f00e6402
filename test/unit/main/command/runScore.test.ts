// The headless command from words to exit status, with the real reader and the real core, on real files of a temporary
// folder; and the stand-ins that show what happens when a promise is broken.

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeReportSchema } from '../../../../core/contract/commandReport.ts';
import { readCapture } from '../../../../core/reading/readCapture.ts';
import type { World } from '../../../../main/command/runScore.ts';
import { HOSTILE_TEXTS } from '../../../support/hostileTexts.ts';
import { commandIn, reportsOf } from '../../../support/scoreCommand.ts';

const folder = mkdtempSync(join(tmpdir(), 'tailtrace-score-'));
const DRIVE = join(import.meta.dirname, '../../../../assets/drives/van-before.csv');
const drive = readFileSync(DRIVE);

beforeAll(() => {
  copyFileSync(DRIVE, join(folder, 'van.csv'));
  writeFileSync(join(folder, 'empty.csv'), '');
  writeFileSync(join(folder, 'picture.png'), Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'));
  writeFileSync(join(folder, 'words.csv'), 'Dear reader,\nthis is a letter.\nNo numbers here.\n');
  writeFileSync(join(folder, 'header.csv'), 'Time (s),O2 B1S1 (V),RPM\n');
  writeFileSync(join(folder, 'cut.csv'), drive.subarray(0, drive.length / 2));
  writeFileSync(join(folder, 'binary.csv'), createHash('sha512').update('noise').digest());
  writeFileSync(join(folder, 'wide.csv'), `${'c,'.repeat(1_000_000)}\n${'1,'.repeat(1_000_000)}\n`);
  writeFileSync(join(folder, 'forbidden.csv'), drive);
  chmodSync(join(folder, 'forbidden.csv'), 0);
  mkdirSync(join(folder, 'folder'));
  execFileSync('mkfifo', [join(folder, 'pipe')]);
  symlinkSync(join(folder, 'loop'), join(folder, 'loop'));
  symlinkSync(DRIVE, join(folder, 'link.csv'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = commandIn(folder);

describe('judging', () => {
  test('--json prints one object a capture, one a line, and nothing else', async () => {
    const said = await run(['van.csv', 'van.csv', '--json']);
    expect(said).toMatchObject({ status: 0, err: '' });
    const reports = reportsOf(said);
    expect(reports.map(({ capture }) => [capture.file, capture.input])).toEqual([
      ['van.csv', 1],
      ['van.csv', 2],
    ]);
    expect(reports[0]?.verdict.finding).toBe('notStoring');
  });

  test('T-EV-4: the hash is that of the bytes, by file, by link and by standard input', async () => {
    const sha256 = createHash('sha256').update(drive).digest('hex');
    const stdin = () =>
      Readable.from(
        Array.from({ length: Math.ceil(drive.length / 1000) }, (_, i) => drive.subarray(i * 1000, i * 1000 + 1000)),
      );
    const said = await run(['van.csv', 'link.csv', '-', '--json'], { stdin: stdin() });
    const reports = reportsOf(said);
    expect(reports.map(({ capture }) => capture.sha256)).toEqual([sha256, sha256, sha256]);
    expect(reports.map(({ capture }) => capture.file)).toEqual(['van.csv', 'link.csv', 'standard input']);
    expect(reports[2]?.verdict).toEqual(reports[0]?.verdict);
  });

  test('the same call gives the same bytes', async () => {
    const words = ['van.csv', '--json', '--inlet', '290F', '--outlet', '385F'];
    expect(await run(words)).toEqual(await run(words));
  });

  test('windows, temperatures, codes and bank go in', async () => {
    const said = await run([
      'van.csv',
      '--json',
      '--window',
      '70..130',
      '--inlet',
      '500F',
      '--outlet',
      '384F',
      '--inlet',
      '300C',
      '--outlet',
      '310C',
      '--trouble-codes',
      'P0300',
      '--bank',
      '1',
    ]);
    const [report] = reportsOf(said);
    expect(report?.windows).toMatchObject([{ startS: 70, endS: 130, bank: 1, kind: 'hold', origin: 'byHand' }]);
    expect(report?.thermal).toMatchObject([
      { inletC: 260, riseC: -64.4444444444, brick: 1, bank: 1 },
      { inletC: 300, outletC: 310, riseC: 10, brick: 2 },
    ]);
    expect(report?.verdict.blockerIds).toContain('misfire');
    expect(report?.verdict.blockers[0]).toMatch(/^A misfire/);
    expect((await run(['van.csv', '--json', '--bank', '2'])).out).toContain('"windows":[]');
    const { out: other } = await run(['van.csv', '--bank', '2']);
    expect(other).toContain('There is no front sensor in this capture. That is so for bank 2; bank 1 has one.');
  });

  test('--describe tells what is in a capture and scores nothing', async () => {
    const refuseToScore: Partial<World> = {
      score: () => {
        throw new Error('scored');
      },
    };
    const said = await run(['van.csv', '--describe', '--json'], refuseToScore);
    expect(describeReportSchema.parse(JSON.parse(said.out)).capture.channels.length).toBeGreaterThan(3);
    const words = await run(['van.csv', '--describe'], refuseToScore);
    expect(words.out).toContain('Upstream oxygen sensor, bank\u00a01: "O2S B1S1"');
    expect(words.out).not.toContain('does not store');
  });

  test('without --json the report is for people: verdict, reasons, windows, next test', async () => {
    const { out } = await run(['van.csv', '--trouble-codes', 'P0420']);
    expect(out).toMatch(/^van\.csv\n/);
    expect(out).toContain('Converter of bank 1: does not store oxygen');
    expect(out).toMatch(/, hold, bank\u00a01: (does not store|stores|cannot tell)/);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
  });

  test('--help and --version', async () => {
    expect((await run(['--help'])).out).toContain('Exit status: 0');
    expect(await run(['--version'])).toEqual({ status: 0, out: '0.1.0\n', err: '' });
  });
});

describe('wrong usage: status 2, one sentence, nothing on standard output', () => {
  test.each([
    [['--jason', 'van.csv'], 'no flag --jason'],
    [[], 'at least one capture'],
    [['van.csv', '--columns', 'gone.json'], 'gone.json: The file is not there any more.'],
    [['van.csv', '--columns', 'words.csv'], 'words.csv: This columns file is not JSON'],
    [['van.csv', '--window', '9000..9100'], 'van.csv: The window 9000..9100'],
    [['van.csv', '--window', '14:00..14:01'], 'van.csv: The capture has no clock'],
  ])('%j', async (words, part) => {
    const said = await run(words);
    expect(said).toMatchObject({ status: 2, out: '' });
    expect(said.err).toContain(part);
    expect(said.err).toMatch(/^[^\n]+\n$/);
  });
});

describe('captures that cannot be read: status 3, one line each, the others still judged', () => {
  const refusals: readonly (readonly [string, RegExp])[] = [
    ['empty.csv', /empty\.csv: This file is empty\./],
    ['picture.png', /picture\.png: .*picture/],
    ['words.csv', /words\.csv.*: .*(numbers|header)/],
    ['header.csv', /header\.csv.*: .*no rows of data/],
    ['binary.csv', /binary\.csv.*: /],
    ['wide.csv', /wide\.csv: This file has .* columns/],
    ['folder', /folder: This is a folder\./],
    ['pipe', /pipe: This is not a file/],
    ['/dev/zero', /zero: This is not a file/],
    ['loop', /loop: The file is a link that leads back to itself/],
    ['gone.csv', /gone\.csv: The file is not there any more/],
    // Root may read everything, so only others meet this refusal.
    ...(process.getuid?.() === 0 ? [] : [['forbidden.csv', /forbidden\.csv: You may not read this file/] as const]),
  ];
  test.each(refusals)('%s', async (named, line) => {
    const said = await run([named, 'van.csv', '--json']);
    expect(said.status).toBe(3);
    expect(said.err).toMatch(line);
    expect(said.err).toMatch(/^[^\n]+\n$/);
    expect(said.err).not.toContain(folder);
    expect(said.err).not.toMatch(/Error|ENOENT|EISDIR|undefined|\bat \S+:\d/);
    expect(reportsOf(said)).toHaveLength(1);
  });

  test('a truncated file is read as far as it goes', async () => {
    const said = await run(['cut.csv', '--json']);
    expect(said.status).toBe(0);
    expect(reportsOf(said)[0]?.capture.durationS).toBeGreaterThan(100);
  });

  test('T-OPEN-7: a file that changes while it is read is refused', async () => {
    const place = join(folder, 'growing.csv');
    writeFileSync(place, drive);
    const said = await run(['growing.csv', '--json'], {
      async read(source, options) {
        const read = await readCapture(source, options);
        writeFileSync(place, 'more', { flag: 'a' });
        return read;
      },
    });
    expect(said).toMatchObject({ status: 3, out: '' });
    expect(said.err).toContain('growing.csv: The file was changed while it was being read.');
  });

  test('standard input that breaks off with a fault is one line too', async () => {
    const stdin = new Readable({
      read() {
        this.destroy(Object.assign(new Error('x'), { code: 'EIO' }));
      },
    });
    const said = await run(['-', '--json'], { stdin });
    expect(said).toMatchObject({ status: 3, out: '' });
    expect(said.err).toMatch(/^standard input: [^\n]+\n$/);
  });
});

describe('T-INJ-7: what a file is called does not reach the terminal', () => {
  test('names of channels are written out for people, and escaped in JSON', async () => {
    const names = HOSTILE_TEXTS.filter((text) => !/[",\r\n\ud800-\udfff]/u.test(text)).slice(0, 200);
    const rows = Array.from({ length: 200 }, (_, i) => [i / 10, ...names.map((_, k) => (k % 7) + (i % 5))].join(','));
    writeFileSync(join(folder, 'hostile.csv'), [['time (s)', ...names].join(','), ...rows].join('\n'));
    const people = await run(['hostile.csv', '--describe']);
    const json = await run(['hostile.csv', '--describe', '--json']);
    expect([people.status, json.status]).toEqual([0, 0]);
    for (const text of [people.out, json.out])
      expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
    expect(json.out.trimEnd()).not.toContain('\n');
    expect(people.out).toContain('‹U+202E›');
    expect(() => JSON.parse(json.out)).not.toThrow();
  });

  test('neither does the name of the file itself', async () => {
    const said = await run(['\u001b[31mgone\u202e.csv', '--json']);
    expect(said.err).toContain('‹U+001B›[31mgone‹U+202E›.csv');
  });
});

describe('the sheet', () => {
  test.each(['html', 'csv', 'json', 'md'])('--sheet FILE.%s', async (ending) => {
    const said = await run([
      'van.csv',
      '--sheet',
      `sheet.${ending}`,
      '--trouble-codes',
      'P0420',
      '--inlet',
      '290F',
      '--outlet',
      '385F',
    ]);
    expect(said).toMatchObject({ status: 0, err: '' });
    const text = readFileSync(join(folder, `sheet.${ending}`), 'utf8');
    expect(text).toContain('P0420');
    expect(text).toContain(createHash('sha256').update(drive).digest('hex'));
    expect(text).not.toContain(folder);
  });

  test('holds the picture of the traces, over all captures of the call', async () => {
    await run(['van.csv', 'link.csv', '--sheet', 'both.html']);
    const text = readFileSync(join(folder, 'both.html'), 'utf8');
    expect(text.match(/<img /g)).toHaveLength(2);
    expect(
      decodeURIComponent(/data:image\/svg\+xml;charset=utf-8,([^"]*)/.exec(text)?.[1]?.replaceAll('&#39;', "'") ?? ''),
    ).toContain('0.45 V switch point');
  });

  test('is never written over a capture or a columns file that it reads, by whatever name', async () => {
    copyFileSync(DRIVE, join(folder, 'own.csv'));
    symlinkSync('own.csv', join(folder, 'other.csv'));
    linkSync(join(folder, 'own.csv'), join(folder, 'hard.csv'));
    writeFileSync(join(folder, 'columns.json'), '{"columns":[]}');
    for (const [capture, sheet] of [
      ['own.csv', 'own.csv'],
      ['own.csv', './other.csv'],
      ['other.csv', 'hard.csv'],
      ['own.csv', 'columns.json'],
    ] as const) {
      const said = await run([capture, '--columns', 'columns.json', '--json', '--sheet', sheet]);
      expect(said).toMatchObject({ status: 2, out: '' });
      expect(said.err).toMatch(/The sheet would be written over [^\n]+ Give the sheet another name\.\n$/);
    }
    expect(readFileSync(join(folder, 'own.csv')).equals(drive)).toBe(true);
    expect(readFileSync(join(folder, 'columns.json'), 'utf8')).toBe('{"columns":[]}');
  });

  test('a place that cannot be written is one sentence and status 2; the report was printed all the same', async () => {
    const said = await run(['van.csv', '--json', '--sheet', 'nowhere/sheet.html']);
    expect(said.status).toBe(2);
    expect(said.err).toMatch(/^sheet\.html: [^\n]+\n$/);
    expect(reportsOf(said)).toHaveLength(1);
  });
});
