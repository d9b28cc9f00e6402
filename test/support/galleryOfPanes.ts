// The gallery of trace panes for one test file: built and shown once, a fresh page for every test, and no test may leave an
// error in its page.

import type { Browser } from 'playwright';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { buildGallery } from './gallery/buildGallery.ts';
import { type GalleryPage, openGallery } from './galleryPage.ts';
import { launchSystemBrowser } from './systemBrowser.ts';

export interface Gallery {
  /** Opens a page; `show` goes into its address. */
  open(show?: string, viewport?: { readonly width: number; readonly height: number }): Promise<GalleryPage>;
  /** The middle of a pane's paper, in the page that was opened last. */
  middle(pane: string): Promise<{ readonly x: number; readonly y: number }>;
}

export function galleryOfPanes(): Gallery {
  let browser: Browser;
  let addressOf: (show: string) => string;
  const opened: GalleryPage[] = [];

  beforeAll(async () => {
    addressOf = await buildGallery();
    browser = await launchSystemBrowser();
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    for (const { page, errors } of opened.splice(0)) {
      await page.context().close();
      expect(errors).toEqual([]);
    }
  });

  return {
    open: async (show = '', viewport = { width: 1280, height: 800 }) => {
      const gallery = await openGallery(browser, addressOf(show), viewport);
      opened.push(gallery);
      return gallery;
    },
    middle: async (pane) => {
      const box = await opened.at(-1)?.cursor(pane).boundingBox();
      if (box === null || box === undefined) throw new Error(`The pane ${pane} has no paper.`);
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    },
  };
}
