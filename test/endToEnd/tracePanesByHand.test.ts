// The trace panes in the current browser of this machine, over invented channels: wheel and pointer.

import { describe, expect, it } from 'vitest';
import { galleryOfPanes } from '../support/galleryOfPanes.ts';

const { open, middle } = galleryOfPanes();

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
