// The gallery of trace panes in a browser, with the few questions that its tests ask.

import type { Browser, Locator, Page } from 'playwright';
import type { Stretch } from '../../core/windows/window.ts';

declare global {
  interface Window {
    said: unknown[];
    settled(): Promise<void>;
  }
}

/** Left edge of the paper from the left edge of a pane, and what lies right of it, px. */
export const PAPER = { left: 64, right: 28 } as const;

export interface GalleryPage {
  readonly page: Page;
  /** What the page put out as errors. */
  readonly errors: readonly string[];
  pane(name: string): Locator;
  cursor(name: string): Locator;
  /** Resolves when everything asked for is drawn. */
  settled(): Promise<void>;
  /** Everything the panes said under one name, oldest first. */
  said(name: string): Promise<readonly unknown[][]>;
  visible(): Promise<Stretch>;
  /** Pixel in the page at which a time lies now. */
  xOf(timeS: number): Promise<number>;
}

export async function openGallery(browser: Browser, address: string, viewport = { width: 1280, height: 800 }) {
  const context = await browser.newContext({ viewport, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(address);
  await page.locator('.traceStack, .compareStack').waitFor();
  const gallery = questionsOf(page, errors);
  await gallery.settled();
  return gallery;
}

function questionsOf(page: Page, errors: readonly string[]): GalleryPage {
  const visible = (): Promise<Stretch> =>
    page.evaluate(() => {
      const body = document.querySelector('.viewBody');
      const [start, end] = ['.viewEdge.start', '.viewEdge.end'].map((name) =>
        Number(document.querySelector(name)?.getAttribute('aria-valuenow')),
      );
      if (body === null || start === undefined || end === undefined) throw new Error('The strip has no handle.');
      return { startS: start, endS: end };
    });
  return {
    page,
    errors,
    pane: (name) => page.getByRole('figure', { name }),
    cursor: (name) => page.getByRole('slider', { name: `Cursor in ${name}` }),
    // Two rounds: what a gesture changed is rendered in the first frame and may ask for views of its own.
    settled: () =>
      page.evaluate(async () => {
        for (let round = 0; round < 2; round++) {
          await new Promise((resolve) => requestAnimationFrame(() => resolve(null)));
          await window.settled();
        }
      }),
    said: (name) =>
      page.evaluate(
        (wanted) => window.said.filter((one): one is unknown[] => Array.isArray(one) && one[0] === wanted),
        name,
      ),
    visible,
    xOf: async (timeS) => {
      const { startS, endS } = await visible();
      const box = await page.locator('.traceField').boundingBox();
      if (box === null) throw new Error('The panes have no place.');
      const width = box.width - PAPER.left - PAPER.right;
      return box.x + PAPER.left + ((timeS - startS) / (endS - startS)) * width;
    },
  };
}
