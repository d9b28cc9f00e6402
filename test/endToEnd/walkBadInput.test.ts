// Files that are no captures, in the real program: each gets clear sentences that name it, where it was opened, and the
// rest of the work stays open. A long load can be cancelled, and leaves everything as it was.

import {
  appendFileSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { launchProgram, type Program } from '../support/launchProgram.ts';
import { choose, expectNoErrors, openByDialog, openSample, seen, topSentence } from '../support/walkSteps.ts';

const DRIVE = readFileSync('assets/drives/van-before.csv', 'utf8');

let program: Program;
let work = '';

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-bad-'));
  program = await launchProgram();
  await program.settled();
  await openSample(program, 'van-before');
});
afterAll(async () => {
  await program.close();
  rmSync(work, { recursive: true, force: true });
});

/** Puts a file of this content into the folder of this test, and gives its path. */
function file(name: string, content: string | Uint8Array): string {
  const path = join(work, name);
  writeFileSync(path, content);
  return path;
}

const problem = () => program.page.locator('.topLine .problem');

const BAD: readonly (readonly [what: string, path: () => string])[] = [
  ['an empty file', () => file('empty.csv', '')],
  ['a picture', () => file('photo.csv', readFileSync('assets/icon.png'))],
  ['a file with no numbers', () => file('letter.txt', 'Dear Sir,\nthe van is slow.\nYours\n')],
  ['a header without rows', () => file('header.csv', `${DRIVE.split('\n').slice(0, 2).join('\n')}\n`)],
  ['a million columns', () => file('wide.csv', `${'a,'.repeat(1_000_000)}a\n${'1,'.repeat(1_000_000)}1\n`)],
  [
    'a folder',
    () => {
      mkdirSync(join(work, 'folder.csv'), { recursive: true });
      return join(work, 'folder.csv');
    },
  ],
  ['a file that is not there', () => join(work, 'never-written.csv')],
];

describe('what is no capture', () => {
  it.each(BAD)('%s says so in sentences that name it, and the work stays open', async (_what, make) => {
    const path = make();
    const sentence = await topSentence(program);
    await openByDialog(program, path);
    await problem().waitFor();
    const words = await seen(problem());
    expect(words).toContain(path.slice(work.length + 1));
    expect(words).not.toMatch(/Error|undefined|null|NaN|exception|ENOENT|EISDIR|\/tmp/);
    for (const line of words.split(/[.\n]/)) expect(line.split(/\s+/).length).toBeLessThanOrEqual(26);
    expect(await topSentence(program)).toBe(sentence);
    expect(await program.page.locator('.traceStack').count()).toBe(1);
    await problem().getByRole('button', { name: 'Dismiss' }).click();
    await problem().waitFor({ state: 'hidden' });
  });

  it('a file that was cut off opens as far as it goes, and says so', async () => {
    await openByDialog(program, file('cut.csv', DRIVE.slice(0, DRIVE.length / 2 - 7)));
    await program.page.locator('.margin.left h2', { hasText: 'cut' }).waitFor();
    await program.settled();
    await program.page.getByRole('tab', { name: 'Capture' }).click();
    expect(await seen(program.page.locator('.warnings'))).toMatch(/cut|end|row/i);
    await program.page.getByRole('tab', { name: 'Window' }).click();
  });
});

describe('a load that takes long', () => {
  let long = '';
  beforeAll(() => {
    long = file('long.csv', DRIVE);
    const rows = DRIVE.split('\n').slice(2).join('\n');
    const block = rows.repeat(40);
    for (let i = 0; i < 70; i++) appendFileSync(long, block);
  });
  afterAll(() => rmSync(long));

  it('shows a bar with amount and cancel; cancelling leaves everything as it was', async () => {
    const before = await program.page.evaluate(() => window.shell.listVehicles(null));
    await openByDialog(program, long);
    const bar = program.page.getByRole('progressbar', { name: 'Reading long.csv' });
    await bar.waitFor();
    expect(await bar.getAttribute('aria-valuetext')).toMatch(/MB of .*MB, .*rows/);
    const strip = program.page.getByRole('region', { name: 'Beginning of long.csv' });
    await strip.waitFor();
    expect(await program.page.locator('.traceStack').count()).toBe(1); // of the capture that was shown before
    await program.page.getByRole('button', { name: 'Cancel reading long.csv' }).click();
    await bar.waitFor({ state: 'hidden' });
    await strip.waitFor({ state: 'hidden' });
    await program.page.getByText('Opening long.csv was cancelled.').waitFor();
    expect(await problem().count()).toBe(0);
    await program.settled();
    expect(await program.page.evaluate(() => window.shell.listVehicles(null))).toEqual(before);
  });

  it('shows its first rows large where nothing else is shown, and goes back to the start page on cancel', async () => {
    await choose(program, 'file.closeCapture');
    await program.page.locator('.startPage').waitFor();
    await openByDialog(program, long);
    await program.page.getByText(/^The first .* of long\.csv\. The rest is being read\.$/).waitFor();
    await program.page.getByRole('region', { name: 'Traces of long.csv' }).waitFor();
    await program.page.getByRole('button', { name: 'Cancel reading long.csv' }).click();
    await program.page.locator('.startPage').waitFor();
    await openSample(program, 'van-before');
  });
});

describe('a capture that was moved', () => {
  it('is asked for, refused where its hash differs, and taken where it is the same', async () => {
    const path = file('moving.csv', DRIVE.replace('0.01,', '0.02,'));
    await choose(program, 'file.closeCapture');
    await program.page.locator('.startPage').waitFor();
    await openByDialog(program, path);
    await program.page.locator('.margin.left h2', { hasText: 'moving' }).waitFor();
    await program.settled();
    await choose(program, 'file.closeCapture');
    await program.page.locator('.startPage').waitFor();
    const moved = join(work, 'moved elsewhere.csv');
    renameSync(path, moved);

    await program.page
      .locator('.startPage')
      .getByRole('button', { name: /^moving/ })
      .first()
      .click();
    await program.page.getByRole('heading', { name: 'The file was not found' }).waitFor();
    const other = join(work, 'another.csv');
    copyFileSync('assets/drives/van-after.csv', other);
    await program.answerOpenDialogs([other]);
    await program.page.getByRole('button', { name: 'Say where it is' }).click();
    await problem().waitFor();
    expect(await seen(problem())).toMatch(/hash|not the file/i);
    expect(await program.page.locator('.traceStack').count()).toBe(0);

    await program.answerOpenDialogs([moved]);
    await program.page.getByRole('button', { name: 'Say where it is' }).click();
    await program.page.locator('.traceStack').waitFor();
    expect(await program.page.getByRole('heading', { name: 'The file was not found' }).count()).toBe(0);
    expectNoErrors(program);
  });
});
