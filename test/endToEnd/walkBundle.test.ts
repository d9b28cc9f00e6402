// A second reader: one technician hands a bundle over, another one opens it on another computer, sees the same and gets the
// same numbers; a bundle that was changed on the way is refused.

import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { launchProgram, type Program } from '../support/launchProgram.ts';
import {
  acceptOffer,
  addNote,
  addReading,
  choose,
  dialogOf,
  expectNoErrors,
  listOf,
  openByDialog,
  recordAndView,
  seen,
  topSentence,
} from '../support/walkSteps.ts';

const NOTE = 'Rattles when cold, the customer says.';
const PLATE = 'DEPOT 14';

let work = '';
let capture = '';
let bundle = '';
let first: Program;
let second: Program;
/** What the first reader saw and wrote. */
let sentence = '';
let manifestSha256 = '';

/** No sample, so that it is found nowhere but where it lies: an invented drive without its last row. */
const drive = () => readFileSync('assets/drives/van-before.csv', 'utf8').trimEnd().split('\n').slice(0, -1).join('\n');

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-bundle-'));
  capture = join(work, 'bay 3.csv');
  bundle = join(work, 'Van 14.tailtrace-bundle');
  writeFileSync(capture, drive());
  for (const reader of ['first', 'second']) mkdirSync(join(work, reader));
  first = await launchProgram({ dataFolder: join(work, 'first'), args: [capture] });
  await first.page.locator('.report .result').first().waitFor();
  await first.settled();
});
afterAll(async () => {
  await second?.close();
  rmSync(work, { recursive: true, force: true });
});

const dataOf = (program: Program) => recordAndView(program).then((loaded) => (loaded.ok ? loaded.record : null));

describe('the first reader', () => {
  it('marks, measures and notes', async () => {
    await acceptOffer(first);
    await addReading(first, '500', '384', 'F');
    await addNote(first, NOTE);
    await choose(first, 'vehicle.details');
    await first.page.getByLabel('Number plate').fill(PLATE);
    await first.page.keyboard.press('Escape');
    await first.settled();
    sentence = await topSentence(first);
    expect(sentence).toMatch(/does not store oxygen/);
  });

  it('writes a bundle and reads its hash, whole', async () => {
    await first.answerSaveDialogs(bundle);
    await choose(first, 'file.exportBundle');
    const dialog = dialogOf(first, 'Bundle for a second reader');
    await dialog.getByRole('button', { name: 'Write the bundle' }).click();
    await dialog.getByText('Van 14.tailtrace-bundle was written.').waitFor();
    manifestSha256 = await seen(dialog.locator('code'));
    expect(manifestSha256).toMatch(/^[0-9a-f]{64}$/);
    expect(await seen(dialog)).toContain('does not show who made the bundle');
    expect(statSync(bundle).size).toBeGreaterThan(10_000);
    expect(readFileSync(bundle).includes(PLATE)).toBe(false);
    await first.page.keyboard.press('Escape');
  });

  it('is told of a capture that has moved, and goes on without it only on purpose', async () => {
    const moved = join(work, 'elsewhere.csv');
    writeFileSync(moved, readFileSync(capture));
    rmSync(capture);
    await choose(first, 'file.exportBundle');
    const dialog = dialogOf(first, 'Bundle for a second reader');
    const write = dialog.getByRole('button', { name: 'Write the bundle' });
    await dialog.getByText('bay 3.csv was not found where it was.').waitFor();
    expect(await write.getAttribute('aria-disabled')).toBe('true');
    await dialog.getByLabel('Go on without bay 3.csv').check();
    expect(await write.getAttribute('aria-disabled')).toBeNull();
    await first.page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expectNoErrors(first);
    await first.close();
    rmSync(moved);
  });
});

describe('the second reader, on another computer', () => {
  it('opens the bundle and compares its hash', async () => {
    second = await launchProgram({ dataFolder: join(work, 'second'), args: [bundle] });
    const dialog = dialogOf(second, 'Bundle: bay 3');
    await dialog.waitFor();
    expect(await seen(dialog.locator('code'))).toBe(manifestSha256);
    await dialog.getByRole('radio', { name: /^Everything at once/ }).check();
    await dialog.getByRole('button', { name: 'Take it in' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await listOf(second, 'Windows').getByText('Hold 1').waitFor();
    await second.settled();
  });

  it('sees the same windows, notes, readings and finding, and the traces', async () => {
    expect(await topSentence(second)).toBe(sentence);
    expect(await seen(listOf(second, 'Notes'))).toContain('Rattles when cold');
    await listOf(second, 'Temperatures').getByText('500 °F to 384 °F').waitFor();
    expect(await second.page.locator('.traceStack figure').count()).toBeGreaterThan(2);
    expect(await second.page.getByText('is not where it was').count()).toBe(0);
    const record = await dataOf(second);
    expect(record?.identity.plate).toBe('');
    const [kept] = Object.values(record?.findings ?? {});
    expect(kept?.finding).toBe('notStoring');
  });

  it('has the capture as a copy of its own that nobody changes', () => {
    const folder = join(work, 'second', 'vehicles');
    const [vehicle = ''] = readdirSync(folder);
    const copies = readdirSync(join(folder, vehicle, 'captures'));
    expect(copies).toHaveLength(1);
    const copy = join(folder, vehicle, 'captures', copies[0] ?? '');
    expect(readFileSync(copy, 'utf8')).toBe(drive());
    expect(statSync(copy).mode & 0o222).toBe(0);
  });

  it('deletes the vehicle, with the copy, and takes the bundle in anew', async () => {
    await choose(second, 'vehicle.delete');
    await dialogOf(second, 'Delete bay 3?').getByRole('button', { name: 'Delete for good' }).click();
    await second.page.getByText('bay 3 was deleted.').waitFor({ state: 'attached' });
    const folder = join(work, 'second', 'vehicles');
    const left = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name));
    expect(left.filter((path) => statSync(path).isFile())).toEqual([]);
    await openByDialog(second, bundle);
    const dialog = dialogOf(second, 'Bundle: bay 3');
    await dialog.getByRole('radio', { name: /^Everything at once/ }).check();
    await dialog.getByRole('button', { name: 'Take it in' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await listOf(second, 'Windows').getByText('Hold 1').waitFor();
    await second.settled();
    expect(await topSentence(second)).toBe(sentence);
    expect(await seen(listOf(second, 'Notes'))).toContain('Rattles when cold');
    expect(await second.page.locator('.traceStack figure').count()).toBeGreaterThan(2);
  });

  it('opens it once more, and has nothing to take in as long as nothing was changed here', async () => {
    await openByDialog(second, bundle);
    const dialog = dialogOf(second, 'Bundle: bay 3');
    await dialog.getByText('You have bay 3 already, with the very same record.').waitFor();
    await dialog.getByRole('button', { name: 'Leave it' }).click();
    await dialog.waitFor({ state: 'hidden' });
  });

  it('writes a note, opens it again, and gets it beside the vehicle that is there', async () => {
    await addNote(second, 'I read this otherwise.');
    const before = await dataOf(second);
    await openByDialog(second, bundle);
    const dialog = dialogOf(second, 'Bundle: bay 3');
    await dialog.getByText('Yours stays as it is').waitFor();
    await dialog.getByRole('button', { name: 'Take it in beside mine' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await second.page
      .getByText(/bay 3 \(received \d{4}-\d\d-\d\d\)/)
      .first()
      .waitFor();
    await second.settled();
    const vehicles = await second.page.evaluate(() => window.shell.listVehicles(null));
    expect(vehicles).toHaveLength(2);
    const kept = await second.page.evaluate((id) => window.shell.loadVehicle({ id }), before?.id ?? '');
    expect(kept.ok && kept.record).toEqual(before);
  });

  it('is told which file of a bundle was changed on the way', async () => {
    const bytes = readFileSync(bundle);
    const at = bytes.indexOf('capture-1') + 'capture-1'.length + 2000;
    const changed = join(work, 'changed.tailtrace-bundle');
    writeFileSync(
      changed,
      bytes.map((byte, i) => (i === at ? byte ^ 1 : byte)),
    );
    await openByDialog(second, changed);
    const problem = second.page.locator('[data-problem^="bundle."]').first();
    expect(await seen(problem)).toMatch(/bay 3\.csv was changed|damaged at "bay 3\.csv"/);
    expectNoErrors(second);
  });
});
