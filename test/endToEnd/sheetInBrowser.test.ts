// The evidence sheet and the picture of the traces in a real browser, with everything a stranger may have typed in every
// place: nothing runs, nothing is asked for, everything is read as text (T-INJ-2, T-INJ-4); and G4: it passes axe.

import AxeBuilder from '@axe-core/playwright';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildSheet } from '../../core/evidence/buildSheet.ts';
import { html } from '../../core/evidence/formats/html.ts';
import { tracePicture } from '../../core/evidence/tracePicture.ts';
import { hostileSheet } from '../support/hostileSheet.ts';
import { HOSTILE_TEXTS } from '../support/hostileTexts.ts';
import { sheetInput } from '../support/sheetInput.ts';
import { launchSystemBrowser } from '../support/systemBrowser.ts';

let browser: Browser;
let page: Page;
let served = { body: '', contentType: '' };
let happened: string[] = [];

beforeAll(async () => {
  browser = await launchSystemBrowser();
  page = await browser.newPage();
  page.on('dialog', (dialog) => {
    happened.push(`dialog ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('popup', () => happened.push('popup'));
  await page.route('**/*', (route) => {
    const address = route.request().url();
    if (address === 'https://sheet.invalid/') return route.fulfill(served);
    happened.push(`request ${address}`);
    return route.abort();
  });
});
afterAll(() => browser.close());

/** What happened while a document was shown, and what stands in it. */
async function shown(body: string, contentType: string, seen: readonly string[]) {
  happened = [];
  served = { body, contentType };
  await page.goto('https://sheet.invalid/');
  const found = await page.evaluate((texts) => {
    const all = [...document.querySelectorAll('*')];
    const text = document.documentElement.textContent ?? '';
    return {
      elements: all.map((element) => element.localName),
      events: all.flatMap((element) => element.getAttributeNames().filter((name) => name.startsWith('on'))),
      missing: texts.filter((one) => !text.includes(one)),
    };
  }, seen);
  return { happened, ...found };
}

/** Texts that come through as they are; the others are written out or have their lines folded. */
const literal = HOSTILE_TEXTS.filter((text) => !/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\uffff]|^\s|\s$/u.test(text));

describe('T-INJ-2: the HTML sheet in a browser', () => {
  test('60 and more hostile texts in every place: no dialog, no request, no script, and each is read as text', async () => {
    const harmless = await shown(html.write(buildSheet(hostileSheet('harmless'))), 'text/html', ['harmless']);
    expect(harmless.happened).toEqual([]);
    for (const text of HOSTILE_TEXTS) {
      const found = await shown(
        html.write(buildSheet(hostileSheet(text))),
        'text/html',
        literal.includes(text) ? [text] : [],
      );
      expect(found.happened, text).toEqual([]);
      expect(found.elements, text).toEqual(harmless.elements);
      expect(found.events, text).toEqual([]);
      expect(found.missing, text).toEqual([]);
    }
    expect(harmless.elements).not.toContain('script');
    expect(literal.length).toBeGreaterThan(50);
  });

  test('G4: it passes axe', async () => {
    const sheet = html.write(buildSheet(sheetInput()));
    const open = await browser.newContext();
    const alone = await open.newPage();
    // The sheet's own policy forbids every script, also those of the checker: it is read without that one line.
    await alone.setContent(sheet.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, ''));
    const { violations } = await new AxeBuilder({ page: alone })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    await open.close();
  });

  test('on paper no row, fact, item of a list or line to be filled in is torn in two', async () => {
    const paper = await browser.newContext();
    const alone = await paper.newPage();
    await alone.emulateMedia({ media: 'print' });
    await alone.setContent(html.write(buildSheet(sheetInput())));
    const breaks = await alone.evaluate(() =>
      ['tr', 'dl div', 'li', 'figure', '.blank'].map((selector) => [
        selector,
        ...new Set([...document.querySelectorAll(selector)].map((one) => getComputedStyle(one).breakInside)),
      ]),
    );
    expect(breaks).toEqual(['tr', 'dl div', 'li', 'figure', '.blank'].map((selector) => [selector, 'avoid']));
    await paper.close();
  });
});

describe('T-INJ-4: the picture in a browser', () => {
  test('hostile titles, windows, notes and guides: no dialog, no request, no element of theirs', async () => {
    const picture = (text: string) =>
      tracePicture({
        title: text,
        foot: text,
        startS: 0,
        endS: 10,
        width: 1200,
        height: 500,
        decimalSign: '.',
        windows: [{ startS: 1, endS: 9, words: text }],
        notes: [{ startS: 2, words: text }],
        panes: [{ words: text, unit: text, scale: [0, 1], traces: [], guides: [{ low: 0.4, high: 0.5, words: text }] }],
      });
    const harmless = await shown(picture('harmless'), 'image/svg+xml', []);
    for (const text of HOSTILE_TEXTS) {
      const found = await shown(picture(text), 'image/svg+xml', literal.includes(text) ? [text] : []);
      expect(found.happened, text).toEqual([]);
      expect(found.elements, text).toEqual(harmless.elements);
      expect(found.events, text).toEqual([]);
      expect(found.missing, text).toEqual([]);
    }
  });
});
