// The trace panes in the current browser of this machine, over invented channels: names, contrast, targets, labels.

import { AxeBuilder } from '@axe-core/playwright';
import { describe, expect, it } from 'vitest';
import { galleryOfPanes } from '../support/galleryOfPanes.ts';

const { open } = galleryOfPanes();

describe('what is drawn', () => {
  it('A2: each pane has a name, and a description that follows the view in the words of the core', async () => {
    const { page, pane, cursor } = await open('from=60&to=80');
    const described = async (): Promise<string | null> => {
      const id = await cursor('Engine speed').getAttribute('aria-describedby');
      return page.locator(`[id="${id}"]`).textContent();
    };
    await page.waitForFunction(() => document.querySelectorAll('figure .unseen:not(:empty)').length === 3);
    const first = await described();
    expect(first).toMatch(/^From 60\.\d+\ss to 80\.\d+\ss\. Engine speed: \d+ to \d+ 1\/min\./);
    await cursor('Engine speed').focus();
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
    }
  });
});
