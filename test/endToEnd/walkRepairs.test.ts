// What reading repaired is listed, undone and made again in the real program: by pointer and by keys, with undo and redo,
// across a restart, with a file that has moved, and on to the headless command by the exported columns file. One walk in
// three parts, on one data folder.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { axeFaults } from '../support/axeFaults.ts';
import { launchProgram, makeDataFolder, type Program } from '../support/launchProgram.ts';
import { choose, dialogOf, expectNoErrors, openByDialog, seen } from '../support/walkSteps.ts';

let dataFolder = '';
let work = '';
let program: Program | null = null;

beforeAll(async () => {
  dataFolder = await makeDataFolder();
  work = mkdtempSync(join(tmpdir(), 'tailtrace-repairs-'));
});
afterEach(async () => {
  await program?.close();
  program = null;
});
afterAll(() => {
  for (const folder of [dataFolder, work]) rmSync(folder, { recursive: true, force: true });
});

/** 90.0 s and 60.0 s of a drive in one file, the second from 0 again; a row that comes late; a row without a time. */
function twice(): string {
  const row = (timeS: number, i: number) =>
    `${timeS.toFixed(1)},${(0.45 + 0.4 * Math.sin(i / 3)).toFixed(3)},${(0.62 + 0.02 * Math.sin(i / 50)).toFixed(3)},2300,85`;
  const first = Array.from({ length: 901 }, (_, i) => row(i / 10, i));
  const second = Array.from({ length: 601 }, (_, i) => row(i / 10, i + 7));
  first.splice(100, 2, first[101] ?? '', first[100] ?? '', 'engine off');
  return ['Time (s),O2 B1S1 (V),O2 B1S2 (V),RPM,Coolant (°C)', ...first, ...second, ''].join('\n');
}

const start = async (size?: { width: number; height: number }): Promise<Program> => {
  program = await launchProgram({ dataFolder, ...(size === undefined ? {} : { size }) });
  await program.settled();
  return program;
};
const capture = async ({ page }: Program) =>
  (await seen(page.locator('.margin.right .report'))).replaceAll(/\s+/g, ' ');
const button = ({ page }: Program, words: string) =>
  page.locator('.margin.right').getByRole('button', { name: new RegExp(`^${words}: Time starts again`) });
/** 90 s, 10 s of silence and 60 s; or 60 of the 90 s twice. */
const REPAIRED = '2 min 40 s, 1502 rows';
const UNDONE = '90 s, 1502 rows';

it('a repair is undone, made again by keys, and follows undo and redo', async () => {
  const run = await start({ width: 1280, height: 800 });
  const path = join(work, 'twice.csv');
  writeFileSync(path, twice());
  await openByDialog(run, path);
  await run.page.locator('.margin.left h2', { hasText: 'twice' }).waitFor();
  await run.settled();
  await choose(run, 'vehicle.repairs');
  expect(await capture(run)).toContain(REPAIRED);

  await button(run, 'Undo this repair').click();
  await run.page.getByText('The repair was undone in twice.csv.').waitFor();
  await run.settled();
  expect(await capture(run)).toContain(UNDONE);
  expect(await capture(run)).toContain('a window may hold rows of several. Row 904. The repair was undone.');
  expect(await axeFaults(run.page, true)).toEqual([]);

  // The button that was pressed has become the one that takes it back, and still has the focus.
  expect(await button(run, 'Make this repair again').evaluate((one) => one === document.activeElement)).toBe(true);
  await run.page.keyboard.press('Enter');
  await run.page.getByText('The repair was made again in twice.csv.').waitFor();
  await run.settled();
  expect(await capture(run)).toContain(REPAIRED);

  await choose(run, 'edit.undo');
  await button(run, 'Make this repair again').waitFor();
  await run.settled();
  expect(await capture(run)).toContain(UNDONE);
  await choose(run, 'edit.redo');
  await button(run, 'Undo this repair').waitFor();
  await run.settled();
  expect(await capture(run)).toContain(REPAIRED);
  expectNoErrors(run);
});

it('with the file gone nothing changes; with the file back it is undone, and stays so', async () => {
  const run = await start();
  await run.page.locator('.traceStack').waitFor();
  await run.settled();
  await choose(run, 'vehicle.repairs');
  const path = join(work, 'twice.csv');
  const away = join(work, 'away.csv');
  renameSync(path, away);
  await button(run, 'Undo this repair').click();
  const problem = run.page.locator('.problem');
  await problem.waitFor();
  expect(await seen(problem)).toContain('twice.csv');
  await run.settled();
  expect(await capture(run)).toContain(REPAIRED);
  expect(await run.page.locator('.traceStack').count()).toBe(1);

  renameSync(away, path);
  await button(run, 'Undo this repair').click();
  await button(run, 'Make this repair again').waitFor();
  await problem.waitFor({ state: 'hidden' });
  await run.settled();
  expectNoErrors(run);
});

it('after a restart it is still undone, and the columns file makes the headless command read the same', async () => {
  const run = await start();
  await run.page.locator('.traceStack').waitFor();
  await run.settled();
  await choose(run, 'vehicle.repairs');
  expect(await capture(run)).toContain(UNDONE);

  const columns = join(work, 'columns.json');
  await run.answerSaveDialogs(columns);
  await choose(run, 'vehicle.columns');
  await dialogOf(run, 'Which column is what').getByRole('button', { name: 'Export as columns file' }).click();
  await run.page.getByText('columns.json was written.').waitFor();
  const words = ['dist/main/score.mjs', join(work, 'twice.csv'), '--columns', columns, '--describe', '--json'];
  const report = JSON.parse(execFileSync(process.execPath, words, { encoding: 'utf8' }));
  expect(report.capture).toMatchObject({ durationS: 90, rows: 1502 });
  expect(report.capture.warnings).toContainEqual(expect.objectContaining({ id: 'secondRecording', repaired: false }));
  expect(report.capture.warnings).toContainEqual(expect.objectContaining({ id: 'outOfOrder', repaired: true }));
  expectNoErrors(run);
});
