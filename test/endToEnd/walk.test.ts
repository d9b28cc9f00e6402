// The main job, walked through as a person would in the real program: open a drive, accept a window, read the finding,
// add what hand and thermometer know, hand it over, come back tomorrow.

import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { launchProgram, makeDataFolder, type Program } from '../support/launchProgram.ts';
import {
  acceptOffer,
  addNote,
  addReading,
  choose,
  dialogOf,
  expectNoErrors,
  listOf,
  openSample,
  recordAndView,
  seen,
  topSentence,
} from '../support/walkSteps.ts';

const NOTE = 'Rattles when cold, the customer says.';

let dataFolder = '';
let work = '';
let program: Program;

const drive = () => readFileSync('assets/drives/van-before.csv');
const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

beforeAll(async () => {
  dataFolder = await makeDataFolder();
  work = mkdtempSync(join(tmpdir(), 'tailtrace-walk-'));
  program = await launchProgram({ dataFolder });
  await program.settled();
});
afterAll(async () => {
  await program.close();
  rmSync(work, { recursive: true, force: true });
  rmSync(dataFolder, { recursive: true, force: true });
});

describe('a first start', () => {
  it('shows drives that are marked as invented, and one click leads to a finding', async () => {
    const samples = program.page.locator('[data-sample]');
    expect(await samples.count()).toBe(7);
    for (const words of await samples.allInnerTexts()) expect(words).toContain('Invented');
    await openSample(program, 'van-before');
    expect(await seen(program.page.locator('.resultWords'))).toBe('Does not store oxygen');
    expect(await topSentence(program)).toContain('Nothing is judged yet');
  });
});

describe('the finding', () => {
  it('is the vehicle’s once the offered window is accepted', async () => {
    await acceptOffer(program);
    expect(await topSentence(program)).toMatch(/^Converter of bank 1: does not store oxygen \(9\d %\)/);
    expect(await seen(listOf(program, 'Windows'))).toContain('Hold 1');
  });

  it('reads like a laboratory report: sure, why, conditions in sign and word, measures with units', async () => {
    const report = program.page.locator('.margin.right');
    expect(await seen(report.locator('.result'))).toMatch(/9\d.% sure that it does not store oxygen/);
    expect(await report.locator('.reasons td.figure').count()).toBeGreaterThan(1);
    const conditions = await report.locator('[data-condition]').allInnerTexts();
    expect(conditions.length).toBeGreaterThan(10);
    for (const words of conditions) expect(words).toMatch(/: (met|not met|not recorded)/);
    expect(await report.locator('[data-measure] th').allInnerTexts()).toContainEqual(expect.stringMatching(/, Hz$/));
    expect(await seen(report)).not.toMatch(/NaN|undefined|Error:/);
  });

  it('is undone and done again by its name', async () => {
    await choose(program, 'edit.undo');
    await program.page.getByText('Nothing is judged yet').waitFor();
    expect(await seen(program.page.getByRole('status').first())).toBe('Undo: accept window. Done.');
    await choose(program, 'edit.redo');
    await program.page.getByRole('heading', { level: 1, name: /does not store/ }).waitFor();
    await listOf(program, 'Windows').getByRole('button', { name: 'Hold 1', exact: false }).first().click();
  });
});

describe('what hand and eye add', () => {
  it('a pair of temperatures, read together with the traces', async () => {
    await addReading(program, '500', '384', 'F');
    await listOf(program, 'Temperatures').getByText('500 °F to 384 °F').waitFor();
    await program.page.getByRole('heading', { level: 1, name: /one thermal pair/ }).waitFor();
    await program.page.getByRole('tab', { name: 'Vehicle' }).click();
    // 500 °F is 260 °C and 384 °F is 195.6 °C.
    expect(await seen(program.page.locator('.margin.right'))).toContain('−64');
  });

  it('a note that is kept while it is typed', async () => {
    await addNote(program, NOTE);
    expect(await seen(listOf(program, 'Notes'))).toContain('Rattles when cold');
  });
});

describe('handing it over', () => {
  it.each([
    ['HTML', 'html', (text: string) => expect(text).toMatch(/^<!doctype html>[\s\S]*does not store oxygen/i)],
    ['PDF', 'pdf', (text: string) => expect(text).toMatch(/^%PDF-1\./)],
    ['CSV', 'csv', (text: string) => expect(text).toContain('Does not store oxygen')],
    [
      'JSON',
      'json',
      (text: string) => expect(JSON.parse(text)).toMatchObject({ title: expect.stringContaining('Van 14') }),
    ],
    ['Markdown', 'md', (text: string) => expect(text).toMatch(/^# /)],
  ] as const)('as %s', async (words, ending, looksRight) => {
    const place = join(work, `sheet.${ending}`);
    await program.answerSaveDialogs(place);
    await choose(program, 'file.exportSheet');
    const dialog = dialogOf(program, 'Evidence sheet');
    await dialog.getByRole('button', { name: `${words}: write the sheet` }).click();
    await program.page.getByText(`sheet.${ending} was written.`).waitFor({ state: 'attached' });
    looksRight(readFileSync(place, ending === 'pdf' ? 'latin1' : 'utf8'));
    await program.page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
  });

  it('the traces as PNG and SVG, the notes as CSV', async () => {
    for (const [kind, start] of [
      ['SVG', '<?xml'],
      ['PNG', '\u0089PNG'],
    ] as const) {
      const place = join(work, `traces.${kind.toLowerCase()}`);
      await program.answerSaveDialogs(place);
      await choose(program, 'file.exportPicture');
      const dialog = dialogOf(program, 'Picture of the traces');
      await dialog.getByRole('img').waitFor();
      await dialog.getByRole('button', { name: kind, exact: true }).click();
      await program.page.getByText(`traces.${kind.toLowerCase()} was written.`).waitFor({ state: 'attached' });
      expect(readFileSync(place, 'latin1').startsWith(start)).toBe(true);
      await program.page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'hidden' });
    }
    const place = join(work, 'notes.csv');
    await program.answerSaveDialogs(place);
    await choose(program, 'file.exportNotes');
    await dialogOf(program, 'Notes as a table').getByRole('button', { name: 'CSV: write the notes' }).click();
    await program.page.getByText('notes.csv was written.').waitFor({ state: 'attached' });
    expect(readFileSync(place, 'utf8')).toContain(NOTE);
    await program.page.keyboard.press('Escape');
  });
});

describe('coming back', () => {
  it('finds everything as it was: record, view, finding', async () => {
    await choose(program, 'view.whole');
    await choose(program, 'view.rightMargin');
    await program.page.locator('.margin.right').waitFor({ state: 'hidden' });
    await program.settled();
    expectNoErrors(program);
    const sentence = await topSentence(program);
    await program.close();

    const before = { size: statSync('assets/drives/van-before.csv').size, hash: hash(drive()) };
    program = await launchProgram({ dataFolder });
    await program.page.getByRole('heading', { level: 1, name: /does not store/ }).waitFor();
    await program.settled();
    expect(await topSentence(program)).toBe(sentence);
    expect(await program.page.locator('.margin.right').count()).toBe(0);
    expect(await seen(listOf(program, 'Windows'))).toContain('Hold 1');
    expect(await seen(listOf(program, 'Temperatures'))).toContain('500 °F to 384 °F');
    expect(await seen(listOf(program, 'Notes'))).toContain('Rattles when cold');
    expect({ size: statSync('assets/drives/van-before.csv').size, hash: hash(drive()) }).toEqual(before);
    await choose(program, 'view.rightMargin');
  });

  it('and restarts in which nothing is done change nothing', async () => {
    await program.page.locator('.margin.right').waitFor();
    const found = [];
    for (let start = 0; start < 2; start++) {
      await program.close();
      program = await launchProgram({ dataFolder });
      await program.page.getByRole('heading', { level: 1, name: /does not store/ }).waitFor();
      await program.settled();
      found.push(await recordAndView(program));
    }
    expect(found[1]).toEqual(found[0]);
  });
});

describe('the repair', () => {
  it('is compared with how it was: what was not alike first, then the measures side by side', async () => {
    await choose(program, 'file.openSample');
    await dialogOf(program, 'Sample drives').locator('[data-sample="van-after"]').click();
    await program.page.locator('.margin.right [data-command="window.accept"]').waitFor();
    await program.settled();
    await acceptOffer(program);
    expect(await topSentence(program)).toMatch(/^After the repair: converter of bank 1: stores oxygen/);
    await choose(program, 'window.compare');
    await dialogOf(program, 'Compare windows').getByRole('button', { name: 'Compare', exact: true }).click();
    const table = program.page.getByRole('table');
    await table.first().waitFor();
    expect(await seen(table.first().locator('thead'))).toMatch(/Before\s+After\s+Difference/);
    expect(await seen(program.page.locator('.compareHead h2'))).toMatch(
      /^(The conditions of both windows were alike|Not alike: )/,
    );
    await choose(program, 'window.compare');
    expectNoErrors(program);
  });
});

describe('a van that is not what it looks like', () => {
  it('gets no condemning finding: the sensor and the leak come first', async () => {
    await choose(program, 'file.openSample');
    await dialogOf(program, 'Sample drives').locator('[data-sample="van-trap"]').click();
    await program.page.locator('.margin.left h2', { hasText: 'Van 21' }).waitFor();
    await program.page.locator('.margin.right .result').waitFor();
    await program.settled();
    await choose(program, 'window.acceptAll');
    await listOf(program, 'Windows').getByText('Hold 1').waitFor();
    await program.settled();
    await program.page.getByRole('tab', { name: 'Vehicle' }).click();
    const report = await seen(program.page.locator('.margin.right'));
    expect(report).toContain('Cannot tell yet');
    expect(report).toMatch(/What stands in the way[\s\S]*front sensor/i);
    expect(report).toMatch(/leak/i);
    expect(report).not.toContain('Does not store oxygen');
    expectNoErrors(program);
  });
});
