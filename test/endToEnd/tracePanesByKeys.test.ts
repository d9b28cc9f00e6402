// The trace panes in the current browser of this machine, over invented channels: without a mouse.

import { describe, expect, it } from 'vitest';
import { galleryOfPanes } from '../support/galleryOfPanes.ts';

const { open } = galleryOfPanes();

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
