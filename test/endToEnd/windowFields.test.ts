// Typing, Escape and the focus in the window's dialogs, in the current browser of this machine with a stand-in for the shell.

import type { Browser, BrowserContext, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { VehicleRecord } from '../../core/record/schema.ts';
import { signOpinion } from '../support/everyScreen.ts';
import { type ServedWindow, serveWindow } from '../support/serveWindow.ts';
import type {} from '../support/standInPage.ts'; // what window.standIn is
import { launchSystemBrowser } from '../support/systemBrowser.ts';

let served: ServedWindow;
let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  served = await serveWindow();
  browser = await launchSystemBrowser();
});
afterAll(async () => {
  await browser.close();
  await served.close();
});
afterEach(() => context.close());

/** The window with a sample drive open. */
async function open(): Promise<void> {
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  page = await context.newPage();
  await page.goto(served.address);
  await page.locator('[data-sample="van-before"]').click();
  await page.locator('.margin.right .result').first().waitFor();
  await settled();
}

const settled = () => page.locator('html[data-settled="true"]').waitFor({ state: 'attached' });
const choose = (id: string) => page.evaluate((wanted) => window.standIn.fire('command', { id: wanted }), id);

/** The record as it was saved last. */
async function saved(): Promise<VehicleRecord> {
  await page.locator('.saveState.saved').waitFor();
  await settled();
  return page.evaluate(async () => {
    const [entry] = await window.shell.listVehicles(null);
    const loaded = await window.shell.loadVehicle({ id: entry?.id ?? '' });
    if (!loaded.ok) throw new Error('the vehicle is not kept');
    return loaded.record;
  });
}

describe('a number', () => {
  it('that can be read in two ways is asked about; the last one typed is kept when Escape closes the dialog', async () => {
    await open();
    await choose('vehicle.details');
    const details = page.getByRole('dialog');
    await details.getByLabel('Mileage in').selectOption('mi');
    const mileage = details.getByLabel('Mileage', { exact: true });
    await mileage.fill('128,400');
    await page.keyboard.press('Tab');
    await details.getByText('Type a whole number, without a point or a comma.').waitFor();
    expect((await saved()).identity.mileage).toBeNull(); // a unit alone is no mileage, and 128.4 was not meant
    await mileage.fill('128400');
    await page.keyboard.press('Escape');
    await details.waitFor({ state: 'hidden' });
    await page.locator('.margin.left').getByText('128\u00a0400 mi').waitFor();
    expect((await saved()).identity.mileage).toEqual({ value: 128_400, unit: 'mi' });
  });

  it('that is wrong is not signed with the value from before it', async () => {
    await open();
    await choose('vehicle.sign');
    const sheet = page.getByRole('dialog', { name: 'Sign an opinion' });
    await sheet.getByRole('radio', { name: 'Cannot tell yet' }).check();
    await sheet.getByLabel('Your name').fill('First reader');
    const sure = sheet.getByLabel('How sure you are of it');
    await sure.fill('80');
    await page.keyboard.press('Tab');
    await sure.fill('800');
    await sheet.getByRole('button', { name: 'Sign', exact: true }).click();
    await sheet.getByText('Type 99 or less.').waitFor();
    expect(await sure.evaluate((field) => field === document.activeElement)).toBe(true);
    expect(Object.keys((await saved()).opinions)).toEqual([]);
  });
});

describe('a page that cannot be drawn', () => {
  it('gives way to words that say so, and the work on it is saved all the same', async () => {
    await open();
    await choose('window.accept');
    await page.evaluate(() => {
      // What no shell gives: the dialog that shows it cannot be drawn.
      Object.assign(window.shell, { about: async () => ({ version: '', runtime: '', licences: null }) });
      window.standIn.fire('command', { id: 'help.about' });
    });
    await page.getByRole('alert').getByText('start the program anew').waitFor();
    await page.waitForFunction(async () => {
      const [entry] = await window.shell.listVehicles(null);
      const loaded = await window.shell.loadVehicle({ id: entry?.id ?? '' });
      return loaded.ok && Object.keys(loaded.record.windows).length === 1;
    });
  });
});

describe('what is signed', () => {
  it('is withdrawn once, however often the button is pressed', async () => {
    await open();
    await choose('vehicle.sign');
    await signOpinion(page, { finding: 'Cannot tell yet', sure: '60', reasons: '' });
    await page.getByRole('dialog', { name: 'Opinions' }).getByRole('button', { name: 'Withdraw it' }).click();
    const withdraw = page.getByRole('dialog', { name: 'Withdraw an opinion' });
    await withdraw.getByLabel('Why').fill('The leak was found.');
    await page.keyboard.press('Tab');
    // Both presses come before the first is done with: its hash takes more than a turn.
    await withdraw.getByRole('button', { name: 'Withdraw', exact: true }).evaluate(async (button: HTMLElement) => {
      button.click();
      await Promise.resolve();
      await Promise.resolve();
      button.click();
    });
    await page.getByRole('dialog', { name: 'Opinions' }).waitFor();
    const entries = Object.values((await saved()).opinions).map(({ kind }) => kind);
    expect(entries.sort()).toEqual(['opinion', 'withdrawal']);
  });
});

describe('a note without a name', () => {
  it('keeps the field for the name while it is typed in, and takes the whole name', async () => {
    await open();
    await choose('vehicle.addNote');
    const note = page.getByRole('dialog');
    await note.getByLabel('Words').fill('It rattles.');
    const name = note.getByLabel('Your name');
    await name.fill('K');
    await page.waitForFunction(async () => (await window.shell.settings(null)).reader === 'K');
    await name.fill('Kim');
    await note.getByRole('button', { name: 'Done' }).click();
    await page.locator('.margin.left').getByText('Vehicle, Kim').waitFor();
    expect(Object.values((await saved()).notes).map(({ text, author }) => [text, author])).toEqual([
      ['It rattles.', 'Kim'],
    ]);
  });
});

describe('by keys', () => {
  it('the chosen command stays in sight on the way through the list', async () => {
    await open();
    await choose('edit.find');
    await page.getByRole('combobox').press('ArrowUp'); // round to the last
    const last = page.getByRole('option').last();
    await page.locator('[role="option"][aria-selected="true"]', { hasText: 'About Tailtrace' }).waitFor();
    await last.evaluate(async (option) => {
      const seen = () => option.getBoundingClientRect().bottom <= window.innerHeight;
      while (!seen()) await new Promise(requestAnimationFrame);
    });
  });

  it('the page has the focus where what had it went with the dialog', async () => {
    await open();
    await choose('window.accept');
    const row = page.locator('.margin.left').getByRole('button', { name: 'Exact times and name of Hold 1' });
    await row.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').getByRole('button', { name: 'Delete window' }).press('Enter');
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
    await page.waitForFunction(() => document.activeElement?.tagName === 'MAIN');
  });

  it('Escape hides a tip first, and only then closes the dialog beneath', async () => {
    await open();
    await choose('help.keys');
    const dialog = page.getByRole('dialog', { name: 'Keys' });
    await dialog.waitFor();
    await page.keyboard.press('Tab');
    await dialog.locator('.tip', { hasText: 'Close' }).waitFor();
    await page.keyboard.press('Escape');
    await dialog.locator('.tip').waitFor({ state: 'hidden' });
    expect(await dialog.isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
  });

  it('a pane is folded to its head, and unfolded', async () => {
    await open();
    const pane = page.getByRole('figure', { name: /^Coolant/ });
    await pane.getByRole('button', { name: /and place of/ }).click();
    await pane.getByRole('button', { name: 'Fold' }).click();
    await pane.locator('.panePaper').waitFor({ state: 'detached' });
    await pane.getByRole('button', { name: 'Unfold' }).click();
    await pane.locator('.panePaper').waitFor();
  });
});
