// The headless command hands a whole sheet, with its picture and its tables over many pages, to the shell's engine and
// gets a PDF: the engine of the fallback runtime never came to an end on such a sheet while it was laid out in grids.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'tailtrace-pdf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('npm run score -- --sheet FILE.pdf', () => {
  test.each(['van-before.csv', 'car-two-banks.txt'])('%s', (drive) => {
    const pdf = join(folder, `${drive}.pdf`);
    const words = [
      'main/setup/score.mjs',
      `assets/drives/${drive}`,
      '--json',
      '--sheet',
      pdf,
      '--trouble-codes',
      'P0420',
    ];
    const said = spawnSync(process.execPath, words, { cwd: ROOT, encoding: 'utf8' });
    expect([said.status, said.stderr]).toEqual([0, '']);
    expect(said.stdout.trimEnd().split('\n')).toHaveLength(1);
    const bytes = readFileSync(pdf, 'latin1');
    expect(bytes.startsWith('%PDF-')).toBe(true);
    expect(bytes.match(/\/Type \/Page\b/g)?.length).toBeGreaterThan(5);
    // T-INJ-5: nothing in it can run, start or call.
    expect(bytes).not.toMatch(/\/JavaScript|\/Launch|\/URI/);
  });

  test('eleven windows in full take no more than twenty pages', () => {
    const pdf = join(folder, 'eleven.pdf');
    const windows = Array.from({ length: 11 }, (_, i) => ['--window', `${60 + 12 * i}..${105 + 12 * i}`]).flat();
    const words = ['main/setup/score.mjs', 'assets/drives/van-before.csv', '--json', '--sheet', pdf, ...windows];
    const said = spawnSync(process.execPath, words, { cwd: ROOT, encoding: 'utf8' });
    expect([said.status, said.stderr]).toEqual([0, '']);
    const pages = readFileSync(pdf, 'latin1').match(/\/Type \/Page\b/g)?.length;
    expect(pages).toBeGreaterThan(11);
    expect(pages).toBeLessThanOrEqual(20);
  });
});
