// Starts of the program without a person at its window: T-EL-22, a picture where there is no network; and a sheet that is
// printed for the headless command.

import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { electronArguments } from '../../main/setup/launch.mjs';
import { presentRuntime } from '../../main/setup/runtime.mjs';

let work = '';
beforeAll(() => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-alone-'));
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('T-EL-22: without any network', () => {
  it('a whole start passes in a place that has none', () => {
    const picture = join(work, 'alone.png');
    const runtime = presentRuntime();
    const given = electronArguments([`--snapshot=${picture}`, '--snapshot-size=1280x800']);
    // A network of its own, without a single interface that is up. Needs root, or the right to make name spaces.
    const alone = spawnSync('unshare', ['-rn', runtime?.executable ?? '', ...given], { encoding: 'utf8' });
    expect({ status: alone.status, said: alone.status === 0 ? '' : alone.stderr }).toEqual({ status: 0, said: '' });
    expect(statSync(picture).size).toBeGreaterThan(10_000);
  });
});

describe('a sheet for the headless command', () => {
  it('is printed to a PDF with page numbers by a start without window', () => {
    const sheet = join(work, 'sheet.html');
    const pdf = join(work, 'sheet.pdf');
    writeFileSync(sheet, '<!doctype html><html lang="en"><title>Van 14</title><h1>Evidence</h1></html>');
    const given = electronArguments([`--print-sheet=${sheet}`, `--print-to=${pdf}`, '--paper=Letter']);
    execFileSync(presentRuntime()?.executable ?? '', given, { stdio: 'ignore' });
    const bytes = readFileSync(pdf, 'latin1');
    expect(bytes.startsWith('%PDF-')).toBe(true);
    expect(bytes).toMatch(/\/MediaBox \[\s*0 0 612 792\s*\]/);
    expect(bytes).not.toMatch(/\/JavaScript|\/Launch/);
  });
});
