// The trace panes in the current browser of this machine, over invented channels: what the hand, the keys and the eye
// meet. The same panes in the real program are walked through by the other files of this folder.

import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { buildGallery } from '../support/gallery/buildGallery.ts';
import { type GalleryPage, openGallery } from '../support/galleryPage.ts';
import { launchSystemBrowser } from '../support/systemBrowser.ts';

let browser: Browser;
let addressOf: (show: string) => string;
let gallery: GalleryPage;

beforeAll(async () => {
  addressOf = await buildGallery();
  browser = await launchSystemBrowser();
});
afterAll(() => browser.close());

async function open(show = '', viewport?: { width: number; height: number }): Promise<GalleryPage> {
  gallery = await openGallery(browser, addressOf(show), viewport);
  return gallery;
}
afterEach(async () => {
  const { errors, page } = gallery;
  await page.context().close();
  expect(errors).toEqual([]);
});

/** The middle of a pane's paper, in the page. */
async function middle(name: string): Promise<{ x: number; y: number }> {
  const box = await gallery.cursor(name).boundingBox();
  if (box === null) throw new Error(`The pane ${name} has no paper.`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe('the wheel', () => {
  it('D1: zooms at the pointer; the sample under it moves one pixel at most', async () => {
    const { page, settled, visible, xOf } = await open();
    const { x, y } = await middle('Oxygen sensors');
    await page.mouse.move(x + 100, y);
    await settled();
    const before = await visible();
    const timeS =
      before.startS +
      ((x + 100 - (await xOf(before.startS))) / ((await xOf(before.endS)) - (await xOf(before.startS)))) *
        (before.endS - before.startS);
    for (let turn = 0; turn < 6; turn++) await page.mouse.wheel(0, -120);
    await settled();
    const after = await visible();
    expect(after.endS - after.startS).toBeLessThan((before.endS - before.startS) / 2);
    expect(Math.abs((await xOf(timeS)) - (x + 100))).toBeLessThanOrEqual(1);
  });

  it('D1: pans sideways and with Shift, and zooms with Ctrl where the setting says pan', async () => {
    const { page, settled, visible } = await open('wheel=pan&from=100&to=140');
    const { x, y } = await middle('Engine speed');
    await page.mouse.move(x, y);
    await page.mouse.wheel(50, 0);
    await settled();
    const panned = await visible();
    expect(panned.startS).toBeGreaterThan(100);
    expect(panned.endS - panned.startS).toBeCloseTo(40, 6);
    await page.mouse.wheel(0, 80);
    await settled();
    expect((await visible()).startS).toBeGreaterThan(panned.startS);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -120);
    await page.keyboard.up('Control');
    await settled();
    const zoomed = await visible();
    expect(zoomed.endS - zoomed.startS).toBeLessThan(39);
  });

  it('D1: changes the height of values with Alt, and the pane says that its scale is by hand', async () => {
    const { page, pane, settled } = await open();
    const { x, y } = await middle('Coolant temperature');
    await page.mouse.move(x, y);
    await page.keyboard.down('Alt');
    await page.mouse.wheel(0, -120);
    await page.keyboard.up('Alt');
    await settled();
    await pane('Coolant temperature').getByText('Scale by hand').waitFor();
  });

  it('D14: never scrolls the page beneath', async () => {
    const { page, settled } = await open('', { width: 900, height: 320 });
    const { x, y } = await middle('Oxygen sensors');
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, 400);
    await settled();
    const tops = await page.evaluate(() =>
      [document.scrollingElement, document.querySelector('.traceScroll')].map((box) => box?.scrollTop),
    );
    expect(tops).toEqual([0, 0]);
  });
});

describe('the pointer', () => {
  it('D2: marks a window by dragging, only at the release', async () => {
    const { page, said, settled, xOf } = await open('from=0&to=400');
    const { y } = await middle('Oxygen sensors');
    await page.mouse.move(await xOf(180), y);
    await page.mouse.down();
    await page.mouse.move(await xOf(220), y, { steps: 4 });
    await settled();
    expect(await said('mark')).toEqual([]);
    await page.getByText(/^(39|40)\.\d\ss$/).waitFor();
    await page.mouse.up();
    const [mark] = await said('mark');
    expect(mark?.[1]).toEqual({ startS: expect.closeTo(180, 0), endS: expect.closeTo(220, 0) });
  });

  it('A15: drops a half-drawn window on Escape', async () => {
    const { page, said, settled, xOf } = await open();
    const { y } = await middle('Oxygen sensors');
    await page.mouse.move(await xOf(180), y);
    await page.mouse.down();
    await page.mouse.move(await xOf(220), y, { steps: 4 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await settled();
    expect(await said('mark')).toEqual([]);
    expect(await page.locator('.markPreview').count()).toBe(0);
  });

  it.each(['middle button', 'Space'] as const)('D2: pans with the %s under every tool', async (how) => {
    const { page, visible, settled, xOf, cursor } = await open('from=100&to=140&tool=zoom');
    const { y } = await middle('Oxygen sensors');
    if (how === 'Space') {
      await cursor('Oxygen sensors').focus();
      await page.keyboard.down('Space');
    }
    await page.mouse.move(await xOf(120), y);
    const button = how === 'Space' ? 'left' : 'middle';
    await page.mouse.down({ button });
    await page.mouse.move(await xOf(110), y, { steps: 3 });
    await page.mouse.up({ button });
    if (how === 'Space') await page.keyboard.up('Space');
    await settled();
    expect(await visible()).toEqual({ startS: expect.closeTo(110, 0), endS: expect.closeTo(150, 0) });
  });

  it('drags an edge as one step, and Escape gives it up', async () => {
    const { page, said, settled, xOf } = await open('from=0&to=200');
    const { y } = await middle('Engine speed');
    const edgeS = 412.8 * 0.2;
    await page.mouse.move(await xOf(edgeS), y);
    await page.mouse.down();
    await page.mouse.move(await xOf(90), y, { steps: 3 });
    await page.mouse.up();
    await settled();
    const phases = (await said('windowDrag')).map((one) => one[1]);
    expect(phases[0]).toBe('start');
    expect(phases.at(-1)).toBe('end');
    expect(phases.filter((phase) => phase === 'start' || phase === 'end')).toHaveLength(2);
    const start = page.getByRole('slider', { name: 'Start of Hold 1' });
    expect(Number(await start.getAttribute('aria-valuenow'))).toBeCloseTo(90, 0);
    await page.mouse.move(await xOf(90), y);
    await page.mouse.down();
    await page.mouse.move(await xOf(120), y, { steps: 3 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect((await said('windowDrag')).at(-1)?.[1]).toBe('abandon');
  });

  it('accepts an offer with one click', async () => {
    const { page, said } = await open();
    await page.getByRole('button', { name: /^Accept offer Idle/ }).click();
    expect(await said('accept')).toEqual([['accept', 'o1']]);
  });

  it('D6: the values under the cursor come with units, and nothing moves while it does', async () => {
    const { page, pane, xOf } = await open('from=60&to=80');
    const { y } = await middle('Oxygen sensors');
    const left = await xOf(61);
    const widths = new Set<number>();
    for (let move = 0; move < 100; move++) {
      await page.mouse.move(left + 4 * move, y);
      await page.evaluate(() => window.settled());
      const box = await pane('Oxygen sensors').locator('.paneLegend').boundingBox();
      widths.add(Math.round((box?.width ?? 0) * 10));
      const value = await pane('Oxygen sensors').locator('.traceValue').first().boundingBox();
      widths.add(Math.round((value?.width ?? 0) * 10));
    }
    expect(widths.size).toBe(2);
    const words = await pane('Oxygen sensors').locator('.traceValue').allInnerTexts();
    expect(words).toHaveLength(2);
    for (const each of words) expect(each).toMatch(/^\d\.\d{3}\sV$/);
  });

  it('D6: a second cursor gives the difference in time, value and switches', async () => {
    const { page, settled, xOf, pane } = await open('from=60&to=80');
    const { y } = await middle('Oxygen sensors');
    await page.keyboard.down('Shift');
    await page.mouse.click(await xOf(75), y);
    await page.keyboard.up('Shift');
    await page.mouse.move(await xOf(65), y);
    await settled();
    await page.getByText(/Second cursor \+10\.\d+\ss/).waitFor();
    await page.getByText(/Upstream oxygen sensor: 2\d\sswitches/).waitFor();
    expect(await pane('Engine speed').locator('.traceDifference').textContent()).toMatch(/^Δ [+−]?\d+$/);
  });
});

describe('the keys', () => {
  it('D3: step the cursor by one sample, ten with Shift, and to the next switch with Ctrl', async () => {
    const { page, cursor, settled } = await open('from=60&to=62');
    const slider = cursor('Oxygen sensors');
    await slider.focus();
    const at = async (): Promise<number> => {
      await settled();
      return Number(await slider.getAttribute('aria-valuenow'));
    };
    await page.keyboard.press('ArrowRight');
    const first = await at();
    await page.keyboard.press('ArrowRight');
    expect((await at()) - first).toBeCloseTo(0.01, 6);
    await page.keyboard.press('Shift+ArrowLeft');
    expect((await at()) - first).toBeCloseTo(-0.09, 6);
    await page.keyboard.press('Control+ArrowRight');
    const stop = await at();
    expect(stop).toBeGreaterThan(first - 0.09);
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^6\d\.\d+\ss\. Upstream \d\.\d{3}\sV, Downstream/);
  });

  it('D3: zoom, page and go to both ends', async () => {
    const { page, cursor, settled, visible } = await open('from=100&to=140');
    await cursor('Oxygen sensors').focus();
    await page.keyboard.press('+');
    await settled();
    const closer = await visible();
    expect(closer.endS - closer.startS).toBeCloseTo(40 / 1.5, 3);
    await page.keyboard.press('-');
    await page.keyboard.press('PageDown');
    await settled();
    expect((await visible()).startS).toBeCloseTo(140, 0);
    await page.keyboard.press('Home');
    await settled();
    expect((await visible()).startS).toBe(0);
    await page.keyboard.press('End');
    await settled();
    expect((await visible()).endS).toBeCloseTo(412.8, 6);
  });

  it('B7: move both edges of the selected window, and say the time with its unit', async () => {
    const { page, said, settled } = await open();
    const start = page.getByRole('slider', { name: 'Start of Hold 1' });
    const before = Number(await start.getAttribute('aria-valuenow'));
    await start.focus();
    await page.keyboard.press('ArrowRight');
    await settled();
    expect(Number(await start.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
    expect(await start.getAttribute('aria-valuetext')).toMatch(/^\d+\.\d+\ss$/);
    expect((await said('windowDrag')).map((one) => one[1])).toEqual(['start', 'move', 'end']);
    const end = page.getByRole('slider', { name: 'End of Hold 1' });
    await start.press('End');
    await settled();
    const met = Number(await start.getAttribute('aria-valuenow'));
    expect(met).toBeLessThan(Number(await end.getAttribute('aria-valuenow')));
  });

  it('B1: move and fold the splitter between two panes', async () => {
    const { page, pane } = await open();
    const splitter = page.getByRole('separator', { name: 'Height of Oxygen sensors' });
    const height = async (): Promise<number> => (await pane('Oxygen sensors').boundingBox())?.height ?? 0;
    await splitter.focus();
    const [value, tall] = [await splitter.getAttribute('aria-valuenow'), await height()];
    await page.keyboard.press('ArrowUp');
    expect(Number(await splitter.getAttribute('aria-valuenow'))).toBeLessThan(Number(value));
    expect(await height()).toBeLessThan(tall);
    await page.keyboard.press('Enter');
    expect(await height()).toBeLessThan(60);
    await page.keyboard.press('Enter');
    expect(await height()).toBeGreaterThan(100);
  });

  it('D7: move and stretch the handle of the strip', async () => {
    const { page, settled, visible } = await open('from=100&to=140');
    await page.getByRole('slider', { name: 'Visible stretch' }).focus();
    await page.keyboard.press('ArrowRight');
    await settled();
    expect(await visible()).toEqual({ startS: expect.closeTo(104, 6), endS: expect.closeTo(144, 6) });
    await page.getByRole('slider', { name: 'End of what is visible' }).focus();
    await page.keyboard.press('PageDown');
    await settled();
    expect((await visible()).endS).toBeGreaterThan(144);
  });

  it('A8: Tab passes every pane and leaves the page again', async () => {
    const { page } = await open();
    const stops = new Set<string>();
    await page.locator('body').focus();
    for (let press = 0; press < 60; press++) {
      await page.keyboard.press('Tab');
      stops.add(await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? ''));
    }
    for (const name of [
      'Cursor in Oxygen sensors',
      'Cursor in Coolant temperature',
      'Visible stretch',
      'Start of Hold 1',
    ]) {
      expect([...stops]).toContain(name);
    }
  });
});

describe('what is drawn', () => {
  it('A2: each pane has a name, and a description that follows the view in the words of the core', async () => {
    const { page, pane } = await open('from=60&to=80');
    const described = async (): Promise<string | null> => {
      const id = await gallery.cursor('Engine speed').getAttribute('aria-describedby');
      return page.locator(`[id="${id}"]`).textContent();
    };
    await page.waitForFunction(() => document.querySelectorAll('figure .unseen:not(:empty)').length === 3);
    const first = await described();
    expect(first).toMatch(/^From 60\.\d+\ss to 80\.\d+\ss\. Engine speed: \d+ to \d+ 1\/min\./);
    await gallery.cursor('Engine speed').focus();
    await page.keyboard.press('End');
    await page.waitForFunction((before) => document.body.textContent.includes('From 392') || before === '', first);
    expect(await described()).toMatch(/^From 392/);
    expect(await pane('Oxygen sensors, V').count()).toBe(1);
  });

  it.each(['theme=light', 'theme=dark', 'theme=light&show=compare', 'theme=dark&banks=2'])(
    'A1: has no fault that axe finds (%s)',
    async (show) => {
      const { page } = await open(show);
      const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
      const { violations } = await new AxeBuilder({ page }).options({ preload: false }).withTags(tags).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([]);
    },
  );

  it('A12: gives every handle at least 24 px to grab', async () => {
    const { page } = await open();
    const boxes = await page.evaluate(() =>
      [...document.querySelectorAll('.windowEdge, .windowTab, .noteFlag, .viewEdge, .viewBody, .paneMenuButton')].map(
        (box) => {
          const { width, height } = box.getBoundingClientRect();
          return { name: box.className, width, height };
        },
      ),
    );
    expect(boxes.length).toBeGreaterThan(10);
    for (const { name, width, height } of boxes) expect(Math.min(width, height), name).toBeGreaterThanOrEqual(24);
  });

  it('D10: labels of the time axis do not overlap', async () => {
    for (const show of ['', 'from=60&to=60.6', 'duration=2400&rate=10', 'duration=2400&rate=10&from=600&to=700']) {
      const { page, settled } = await open(show);
      await settled();
      const widest = await page.evaluate(() => {
        const canvas = document.querySelector<HTMLCanvasElement>('.traceStack .timeAxis canvas');
        const picture = canvas?.getContext('2d')?.getImageData(0, 9, canvas.width, canvas.height - 9);
        if (canvas === null || picture === undefined) return [];
        // Runs of columns with ink: letters of one label lie closer than 8 px, labels further apart.
        const inked = Array.from({ length: canvas.width }, (_, x) => {
          for (let y = 0; y < picture.height; y++)
            if ((picture.data[(y * canvas.width + x) * 4 + 3] ?? 0) > 60) return true;
          return false;
        });
        const runs: number[] = [];
        let from = -1;
        let blank = 99;
        inked.forEach((ink, x) => {
          if (ink && blank >= 8) from = x;
          if (ink) blank = 0;
          else if (++blank === 8 && from >= 0) runs.push(x - 8 - from);
        });
        return runs;
      });
      expect(widest.length).toBeGreaterThanOrEqual(4);
      expect(widest.length).toBeLessThanOrEqual(11);
      expect(Math.max(...widest)).toBeLessThan(84);
      await page.context().close();
    }
    await open();
  });
});
