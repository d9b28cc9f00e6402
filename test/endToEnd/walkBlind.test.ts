// A second reader in the real program who reads blind first. What the first reader wrote is marked with words that stand
// nowhere else: none of them may be seen, read aloud, copied or written out before the second reader has signed or looked.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { signOpinion } from '../support/everyScreen.ts';
import { launchProgram, type Program } from '../support/launchProgram.ts';
import {
  acceptOffer,
  addNote,
  choose,
  dialogOf,
  expectNoErrors,
  listOf,
  openByDialog,
  recordAndView,
  seen,
  topSentence,
} from '../support/walkSteps.ts';

/** Words of the first reader, and those in which the program gives its findings and offers. */
const CANARIES = /CANARY|First reader,|\bstor(es|ing)\b|cannot tell|97.%|\bHold\b(?! all| band)|Offer:/gi;

/** Where such words stand in a text, with what is about them. */
function leaks(text: string): string[] {
  return [...text.matchAll(CANARIES)].map(({ index }) => text.slice(Math.max(0, index - 40), index + 40));
}

let work = '';
let bundle = '';
let program: Program;

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-blind-'));
  bundle = join(work, 'bay 3.tailtrace-bundle');
  const capture = join(work, 'bay 3.csv');
  writeFileSync(
    capture,
    readFileSync('assets/drives/van-before.csv', 'utf8').trimEnd().split('\n').slice(0, -1).join('\n'),
  );
  const first = await launchProgram({ dataFolder: join(work, 'first'), args: [capture] });
  await first.page.locator('.report .result').first().waitFor();
  await first.settled();
  await acceptOffer(first);
  await choose(first, 'window.times');
  await first.page.getByRole('dialog').getByLabel('Name').fill('WINDOWCANARY');
  await first.page.keyboard.press('Escape');
  await addNote(first, 'NOTECANARY');
  await choose(first, 'vehicle.sign');
  await signOpinion(first.page, { finding: 'Does not store oxygen', sure: '85', reasons: 'REASONCANARY' });
  await dialogOf(first, 'Opinions').getByRole('button', { name: 'Done' }).click();
  await first.answerSaveDialogs(bundle);
  await choose(first, 'file.exportBundle');
  const dialog = dialogOf(first, 'Bundle for a second reader');
  await dialog.getByRole('button', { name: 'Write the bundle' }).click();
  await dialog.getByText('bay 3.tailtrace-bundle was written.').waitFor();
  await first.page.keyboard.press('Escape');
  expectNoErrors(first);
  await first.close();
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** Takes the bundle in on a computer of its own, as it is offered: blind first. */
async function takeIn(name: string): Promise<void> {
  program = await launchProgram({ dataFolder: join(work, name), args: [bundle] });
  const dialog = dialogOf(program, 'Bundle: bay 3');
  expect(await dialog.getByRole('radio', { name: /^Blind first/ }).isChecked()).toBe(true);
  expect(await seen(dialog)).toContain('courtesy and honest book-keeping, not secrecy');
  expect(await seen(dialog)).not.toMatch(/CANARY/);
  await dialog.getByRole('button', { name: 'Take it in' }).click();
  await dialog.waitFor({ state: 'hidden' });
  await program.page.locator('.traceStack figure').first().waitFor();
  await program.settled();
}

/** All that can be read off the window: the page with what is not painted, the tree for screen readers, the title. */
async function everythingSaid({ app, page }: Program): Promise<string> {
  const text = await page.evaluate(() => document.documentElement.outerHTML);
  const session = await page.context().newCDPSession(page);
  const tree = await session.send('Accessibility.getFullAXTree');
  const title = await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getTitle());
  return [text, JSON.stringify(tree), await page.title(), title].join('\n');
}

/** The signed opinions and the blind reading of the record, as it lies on disk. */
async function kept() {
  const loaded = await recordAndView(program);
  if (!loaded.ok) throw new Error('the vehicle could not be read');
  return loaded.record;
}

describe('a second reader who reads blind first', () => {
  it('is told what is hidden and why, and finds captures and traces', async () => {
    await takeIn('second');
    expect(await topSentence(program)).toContain('Blind reading');
    const bar = program.page.getByRole('region', { name: 'Blind reading' });
    expect(await seen(bar)).toContain('are hidden so that your opinion is your own');
    expect(await seen(listOf(program, 'Captures'))).toContain('bay 3.csv');
    expect(await program.page.locator('.traceStack figure').count()).toBeGreaterThan(2);
    expect(JSON.stringify(await kept())).toMatch(/WINDOWCANARY.*NOTECANARY.*REASONCANARY/s);
  });

  it('finds no word of the first reader or of the program’s verdict anywhere in the window', async () => {
    expect(leaks(await everythingSaid(program))).toEqual([]);
    for (const tab of ['Vehicle', 'Capture', 'Window']) {
      await program.page.getByRole('tab', { name: tab }).click();
      expect(leaks(await everythingSaid(program)), tab).toEqual([]);
    }
    await choose(program, 'vehicle.list');
    await dialogOf(program, 'Vehicles').getByText('bay 3').waitFor();
    expect(leaks(await everythingSaid(program))).toEqual([]);
    await program.page.keyboard.press('Escape');
  });

  it('marks a stretch, and copy and picture hold only what is theirs', async () => {
    await choose(program, 'window.mark');
    await listOf(program, 'Windows').getByText('Stretch 1').waitFor();
    await addNote(program, 'Second thoughts');
    await program.settled();
    expect(leaks(await everythingSaid(program))).toEqual([]);
    await choose(program, 'view.toStart');
    await choose(program, 'edit.copyValues');
    await program.page.getByText('Values and measures are on the clipboard.').waitFor({ state: 'attached' });
    const copied = await program.app.evaluate(({ clipboard }) => clipboard.readText());
    expect(copied).toContain('Channel\tValue');
    expect(leaks(copied)).toEqual([]);
    const picture = join(work, 'picture.svg');
    await program.answerSaveDialogs(picture);
    await choose(program, 'file.exportPicture');
    const dialog = dialogOf(program, 'Picture of the traces');
    await dialog.getByRole('img').waitFor();
    await dialog.getByRole('button', { name: 'SVG' }).click();
    await program.page.getByText('picture.svg was written.').waitFor({ state: 'attached' });
    const drawn = readFileSync(picture, 'utf8');
    expect(drawn).toContain('Stretch 1');
    expect(leaks(drawn)).toEqual([]);
    await program.page.keyboard.press('Escape');
  });

  it.each(['file.exportSheet', 'file.exportBundle', 'vehicle.opinions'])('is refused %s, and told why', async (id) => {
    const item = await program.app.evaluate(
      ({ Menu }, one) => Menu.getApplicationMenu()?.getMenuItemById(one)?.enabled,
      id,
    );
    expect(item).toBe(false);
    await choose(program, 'edit.find');
    const search = dialogOf(program, 'Find a command');
    await search.locator(`[id$="-${id}"]`).getByText('You are reading blind').waitFor();
    expect(leaks(await everythingSaid(program))).toEqual([]);
    await program.page.keyboard.press('Escape');
  });

  it('finds the vehicle as blind as it was left after a restart', async () => {
    expectNoErrors(program);
    await program.close();
    program = await launchProgram({ dataFolder: join(work, 'second') });
    await listOf(program, 'Windows').getByText('Stretch 1').waitFor();
    await program.page.locator('.traceStack figure').first().waitFor();
    await program.settled();
    expect(leaks(await everythingSaid(program))).toEqual([]);
  });

  it('signs, and then has both opinions side by side; the record says blind', async () => {
    await choose(program, 'vehicle.sign');
    const sheet = dialogOf(program, 'Sign an opinion');
    expect(await sheet.getByRole('radio', { checked: true }).count()).toBe(0);
    expect(await seen(sheet)).toContain('Stretch 1');
    expect(await seen(sheet)).not.toMatch(/CANARY|Hold/);
    await signOpinion(program.page, { finding: 'Cannot tell yet', sure: '60', reasons: 'Smoke the exhaust first.' });
    const read = dialogOf(program, 'Opinions');
    await read.locator('[data-chain="whole"]').nth(1).waitFor();
    const said = await seen(read);
    expect(said).toContain('REASONCANARY');
    expect(said).toContain('Smoke the exhaust first.');
    expect(said).toContain('blind, signed before looking');
    await read.getByRole('button', { name: 'Done' }).click();
    await listOf(program, 'Windows').getByText('WINDOWCANARY').waitFor();
    await listOf(program, 'Notes').getByText('NOTECANARY').waitFor();
    expect(await topSentence(program)).toMatch(/stor/);
    expect(leaks(await everythingSaid(program)).join()).toMatch(/WINDOWCANARY.*NOTECANARY/s);
    const { opinions, blindReading } = await kept();
    const own = Object.values(opinions).find((one) => one.kind === 'opinion' && one.confidence === 60);
    expect(own).toMatchObject({ reading: { startedAt: blindReading?.startedAt, lookedAt: null } });
    expectNoErrors(program);
    await program.close();
  });
});

describe('a second reader who looks first', () => {
  it('sees everything at once, and the record says when', async () => {
    await takeIn('third');
    await program.page.getByRole('region', { name: 'Blind reading' }).getByRole('button', { name: 'Look now' }).click();
    await listOf(program, 'Windows').getByText('WINDOWCANARY').waitFor();
    await listOf(program, 'Opinions').getByText('Does not store oxygen').waitFor();
    await program.settled();
    expect(await program.page.getByRole('region', { name: 'Blind reading' }).count()).toBe(0);
    expect((await kept()).blindReading?.lookedAt).toMatch(/^\d{4}-\d\d-\d\dT/);
    await choose(program, 'edit.undo');
    expect((await kept()).blindReading?.lookedAt).not.toBeNull();
  });

  it('signs an opinion that says so', async () => {
    await choose(program, 'vehicle.sign');
    await signOpinion(program.page, { finding: 'Cannot tell yet', sure: '60', reasons: 'Smoke the exhaust first.' });
    const read = dialogOf(program, 'Opinions');
    await read.getByText(/had seen, looked on/).waitFor();
    await read.getByRole('button', { name: 'Done' }).click();
    const { opinions, blindReading } = await kept();
    const own = Object.values(opinions).find((one) => one.kind === 'opinion' && one.confidence === 60);
    expect(own).toMatchObject({ reading: { lookedAt: blindReading?.lookedAt } });
    await openByDialog(program, bundle);
    const again = dialogOf(program, 'Bundle: bay 3');
    expect(await again.getByRole('radio', { name: /^Everything at once/ }).isChecked()).toBe(true);
    await again.getByRole('button', { name: 'Leave it' }).click();
    expectNoErrors(program);
    await program.close();
  });
});
