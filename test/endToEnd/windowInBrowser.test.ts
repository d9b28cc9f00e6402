// The window's part in the current browser of this machine, with a stand-in for the shell and the real core: a short
// smoke test, because the fallback runtime is older than the released one.

import type { Browser, BrowserContext, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { axeFaults } from '../support/axeFaults.ts';
import { everyScreen, type Stage } from '../support/everyScreen.ts';
import { type ServedWindow, serveWindow } from '../support/serveWindow.ts';
import type {} from '../support/standInPage.ts'; // what window.standIn is
import { launchSystemBrowser } from '../support/systemBrowser.ts';

let served: ServedWindow;
let browser: Browser;
let context: BrowserContext;
let errors: string[];

beforeAll(async () => {
  served = await serveWindow();
  browser = await launchSystemBrowser();
});
afterAll(async () => {
  await browser.close();
  await served.close();
});
afterEach(async () => {
  await context.close();
  expect(errors).toEqual([]);
});

async function openWindow(
  colorScheme: 'light' | 'dark',
  before = async (_page: Page): Promise<void> => {},
): Promise<Stage> {
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, colorScheme });
  const page = await context.newPage();
  errors = [];
  page.on('pageerror', (error) => errors.push(error.stack ?? error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await before(page);
  await page.goto(served.address);
  return {
    page,
    choose: (id) => page.evaluate((wanted) => window.standIn.fire('command', { id: wanted }), id),
    settled: () => page.locator('html[data-settled="true"]').waitFor({ state: 'attached' }),
    openBundle: () => page.evaluate(() => window.standIn.openWritten('van.tailtrace-bundle')),
  };
}

const MAIN_SCREENS = ['start page', 'an offer', 'the finding of a window', 'a comparison'];

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  it('every screen is shown, and axe finds nothing on the four one is on most', async () => {
    const stage = await openWindow(theme);
    const faults: string[] = [];
    await everyScreen(stage, async (name) => {
      if (!MAIN_SCREENS.includes(name)) return; // walkScreens.test.ts looks at all, in the real program
      for (const fault of await axeFaults(stage.page)) faults.push(`${name}: ${fault}`);
    });
    expect(faults).toEqual([]);
  });
});

describe('the theme', () => {
  it('follows the system, and the setting where there is one', async () => {
    const { page, choose } = await openWindow('dark');
    const theme = () => page.evaluate(() => document.documentElement.dataset.theme);
    await page.locator('[data-sample]').first().waitFor();
    expect(await theme()).toBe('dark');
    await page.emulateMedia({ colorScheme: 'light' });
    await page.locator('html[data-theme="light"]').waitFor();
    await choose('view.theme');
    await page.locator('html[data-theme="dark"]').waitFor();
    await page.reload();
    await page.locator('html[data-theme="dark"]').waitFor();
  });
});

describe('targets', () => {
  it('A12: every button and field is at least 24 px either way', async () => {
    const stage = await openWindow('light');
    const small = new Set<string>();
    await everyScreen(stage, async (name) => {
      for (const one of await smallTargets(stage.page)) small.add(`${name}: ${one}`);
    });
    expect([...small]).toEqual([]);
  });
});

describe('at 200 %', () => {
  it('A16: no words are cut off and nothing has to be scrolled sideways', async () => {
    const stage = await openWindow('light', (page) => page.setViewportSize({ width: 640, height: 400 }));
    const cut = new Set<string>();
    await everyScreen(stage, async (name) => {
      for (const one of await cutWords(stage.page)) cut.add(`${name}: ${one}`);
    });
    expect([...cut]).toEqual([]);
  });
});

/** Texts of the window, not of the traces, that are wider than what shows them; and the page, where it is too wide. */
function cutWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wide = document.documentElement.scrollWidth > window.innerWidth ? ['the page itself'] : [];
    const texts = document.querySelectorAll('h1, h2, h3, p, li, dt, dd, th, td, label, legend, button, .rowWords');
    const cut = [...texts].filter((one) => {
      if (one.closest('.traceStack, .compareStack, .overview, .statusLine, .unseen, .sheetPreview') !== null)
        return false;
      return one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1;
    });
    return [...wide, ...cut.map((one) => `${one.tagName} ${(one.textContent ?? '').slice(0, 40)}`)];
  });
}

/** Buttons and fields of the window, not of the traces, that are seen and too small. */
function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const targets = document.querySelectorAll('button, input, select, textarea, summary');
    return [...targets].flatMap((target) => {
      if (target.closest('.traceStack, .compareStack, .overview') !== null) return [];
      const { width, height } = target.getBoundingClientRect();
      const shown = width > 0 && height > 0;
      const name = target.getAttribute('aria-label') ?? target.textContent ?? '';
      return shown && (width < 24 || height < 24) ? [`${name} ${Math.round(width)} × ${Math.round(height)}`] : [];
    });
  });
}

describe('typing', () => {
  it('T-AUTO-1: is on disk within a second though it goes on without a pause, and is one step of undo', async () => {
    const { page, choose, settled } = await openWindow('light', (one) => one.clock.install());
    await page.locator('[data-sample="van-before"]').click();
    await page.locator('.margin.right .result').first().waitFor();
    await settled();
    await choose('vehicle.addNote');
    await page.getByRole('dialog').getByLabel('Words').focus();
    await page.clock.pauseAt(await page.evaluate(() => Date.now() + 1000));
    const words = 'The customer says it rattles.';
    for (const letter of words) {
      await page.keyboard.type(letter);
      await page.clock.runFor(100); // ten letters a second, for three seconds
    }
    const onDisk = await page.evaluate(async () => {
      const [entry] = await window.shell.listVehicles(null);
      const loaded = await window.shell.loadVehicle({ id: entry?.id ?? '' });
      return loaded.ok ? Object.values(loaded.record.notes).map(({ text }) => text) : [];
    });
    expect(onDisk).toHaveLength(1);
    expect(words.startsWith(onDisk[0] ?? 'nothing')).toBe(true);
    expect(words.length - (onDisk[0] ?? '').length).toBeLessThanOrEqual(10);
    await page.keyboard.press('Escape');
    await choose('edit.undo');
    await page.getByText('Undo: add note. Done.').waitFor();
    expect(
      await page.locator('.margin.left').getByRole('region', { name: 'Notes' }).getByRole('listitem').count(),
    ).toBe(0);
  });
});

describe('a drag over the window', () => {
  it('C7: shows what will happen to files, refuses what is none, and opens what is dropped', async () => {
    const { page } = await openWindow('light');
    await page.locator('[data-sample]').first().waitFor();
    const drag = (kind: 'files' | 'words', type: string) =>
      page.evaluate(
        ([what, name]) => {
          const data = new DataTransfer();
          const lines = Array.from({ length: 300 }, (_, i) => `${i / 10},${i % 10 < 5 ? 0.1 : 0.8},0.65`);
          const text = ['Time,O2S B1S1,O2S B1S2', 's,V,V', ...lines].join('\n');
          if (what === 'files') data.items.add(new File([text], 'bay-3.csv'));
          else data.setData('text/plain', 'words');
          window.dispatchEvent(new DragEvent(name, { dataTransfer: data, bubbles: true, cancelable: true }));
        },
        [kind, type] as const,
      );
    await drag('words', 'dragover');
    await page.getByText('This is no file.').waitFor();
    await drag('files', 'dragover');
    await page.getByText('Begin a new vehicle with it').waitFor();
    await drag('files', 'drop');
    await page.locator('.margin.left h2', { hasText: 'bay-3' }).waitFor();
    expect(await page.locator('.dropSign').count()).toBe(0);
  });
});
