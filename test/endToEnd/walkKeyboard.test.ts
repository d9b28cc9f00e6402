// The main job without a mouse, in the real program (usability A7, A8, A10).

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchProgram, type Program } from '../support/launchProgram.ts';
import { dialogOf, expectNoErrors, listOf, seen, topSentence } from '../support/walkSteps.ts';

const MOST_TABS = 400;

let program: Program;
let work = '';

beforeAll(async () => {
  work = mkdtempSync(join(tmpdir(), 'tailtrace-keys-'));
  program = await launchProgram();
  await program.settled();
});
afterAll(async () => {
  await program.close();
  rmSync(work, { recursive: true, force: true });
});

const press = (key: string) => program.page.keyboard.press(key);
const type = (words: string) => program.page.keyboard.type(words);

/** Goes on with Tab until the focus is on what the selector names. */
async function tabTo(selector: string): Promise<void> {
  for (let tabs = 0; tabs < MOST_TABS; tabs++) {
    if (await program.page.evaluate((wanted) => document.activeElement?.matches(wanted) === true, selector)) return;
    await press('Tab');
  }
  throw new Error(`${MOST_TABS} tabs do not lead to ${selector}.`);
}

const cursorWords = () => program.page.locator('.cursorSlider:focus').getAttribute('aria-valuetext');

describe('with the keyboard alone', () => {
  it('a drive is opened and its offered window accepted', async () => {
    await tabTo('[data-sample="van-before"]');
    await press('Enter');
    await program.page.locator('.margin.right .result').first().waitFor();
    await program.settled();
    await press('Control+Shift+A');
    await program.page.getByRole('heading', { level: 1, name: /does not store oxygen/ }).waitFor();
  });

  it('the cursor is moved, the view zoomed and gone back', async () => {
    await tabTo('.cursorSlider');
    for (let steps = 0; steps < 2; steps++) {
      const before = await cursorWords();
      await press('ArrowRight');
      await program.page.locator(`.cursorSlider:focus:not([aria-valuetext=${JSON.stringify(before)}])`).waitFor();
    }
    const visible = () => program.page.getByRole('slider', { name: 'Visible stretch' }).getAttribute('aria-valuetext');
    await press('0');
    const whole = await visible();
    await press('+');
    expect(await visible()).not.toBe(whole);
    await press('Backspace');
    expect(await visible()).toBe(whole);
  });

  it('a window is marked, moved by its edge and by exact times, and named', async () => {
    await press('+');
    await press('+');
    await press('Enter');
    await listOf(program, 'Windows')
      .getByRole('button', { name: /^Stretch 1/ })
      .waitFor();
    await press('Control+r');
    const dialog = dialogOf(program, 'Stretch 1');
    await dialog.waitFor();
    await press('Control+a');
    await type('Second look');
    await press('Tab');
    await press('Control+a');
    await type('230,5');
    await press('Tab');
    await press('Control+a');
    await type('300');
    await press('Enter');
    await press('Escape');
    await listOf(program, 'Windows')
      .getByRole('button', { name: /^Second look.*230\.5 to 300\.0/ })
      .waitFor();
    await tabTo('.cursorSlider');
    await press('p');
    await listOf(program, 'Windows').locator('[aria-current="true"]', { hasText: 'Hold 1' }).waitFor();
  });

  it('a pair of temperatures and a note are added', async () => {
    await press('Control+t');
    await dialogOf(program, 'Temperature reading').waitFor();
    await type('268');
    await press('Tab');
    await type('251');
    await press('Tab');
    await press('Tab');
    await type('2250');
    await press('Enter');
    await listOf(program, 'Temperatures').getByRole('button', { name: /^268/ }).waitFor();
    await press('Control+Shift+N');
    await program.page.getByRole('dialog').waitFor();
    await type('Typed without a mouse.');
    await press('Escape');
    await listOf(program, 'Notes')
      .getByRole('button', { name: /^Typed without/ })
      .waitFor();
  });

  it('a command is found by a word, and letters typed there run nothing', async () => {
    await press('Control+Shift+P');
    const dialog = dialogOf(program, 'Find a command');
    await dialog.waitFor();
    await type('sample');
    await press('Enter');
    await dialogOf(program, 'Sample drives').waitFor();
    await tabTo('dialog [data-sample="van-after"]');
    await press('Enter');
    await program.page.locator('.margin.right [data-command="window.accept"]').waitFor();
    await program.settled();
    await press('Control+Shift+A');
    await program.page.getByRole('heading', { level: 1, name: /^After the repair/ }).waitFor();
    await program.settled();
  });

  it('two windows are compared', async () => {
    await press('Control+d');
    await dialogOf(program, 'Compare windows').waitFor();
    await tabTo('dialog .button.main');
    await press('Enter');
    await program.page.locator('.comparePage').waitFor();
    await press('Control+d');
    await program.page.locator('.traceStack').waitFor();
  });

  it('the sheet is handed over', async () => {
    const place = join(work, 'sheet.json');
    await program.answerSaveDialogs(place);
    await press('Control+e');
    await dialogOf(program, 'Evidence sheet').waitFor();
    await tabTo('dialog button[aria-label^="JSON"]');
    await press('Enter');
    await program.page.getByText('sheet.json was written.').waitFor({ state: 'attached' });
    expect(JSON.parse(readFileSync(place, 'utf8')).title).toContain('Van 14');
    await press('Escape');
    await dialogOf(program, 'Evidence sheet').waitFor({ state: 'hidden' });
  });

  it('both margins are folded and unfolded', async () => {
    await press('F8');
    await program.page.locator('.margin').first().waitFor({ state: 'hidden' });
    await press('F8');
    await program.page.locator('.margin.right').waitFor();
  });
});

describe('the focus', () => {
  it('A8 and A10: visits every region and comes back; each stop is seen and not covered', async () => {
    const regions = new Set<string>();
    const unseen = new Set<string>();
    await press('Tab'); // from the page itself, which is no stop
    const first = await stop();
    let back = false;
    for (let tabs = 0; tabs < MOST_TABS && !back; tabs++) {
      await press('Tab');
      const here = await stop();
      regions.add(here.region);
      if (!here.ring) unseen.add(`no ring: ${here.name}`);
      if (here.covered) unseen.add(`covered: ${here.name}`);
      back = here.name === first.name && here.nth === first.nth;
    }
    expect(back).toBe(true);
    expect([...regions]).toEqual(expect.arrayContaining(['topLine', 'margin left', 'centre', 'margin right']));
    expect([...unseen]).toEqual([]);
  });

  it('goes back where it came from when a dialog closes', async () => {
    await tabTo('[data-command="file.open"]');
    await press('F1');
    await dialogOf(program, 'Keys').waitFor();
    await press('Escape');
    await dialogOf(program, 'Keys').waitFor({ state: 'hidden' });
    expect(await program.page.evaluate(() => document.activeElement?.getAttribute('data-command'))).toBe('file.open');
  });
});

/** Where the focus is: in which region, under which name, whether its ring shows, whether something lies over it. */
function stop() {
  return program.page.evaluate(() => {
    const at = document.activeElement ?? document.body;
    at.scrollIntoView({ block: 'nearest' });
    const box = at.getBoundingClientRect();
    const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    const style = getComputedStyle(at);
    const after = getComputedStyle(at, '::after');
    const ringed = (one: CSSStyleDeclaration) =>
      one.outlineStyle !== 'none' && Number.parseFloat(one.outlineWidth) >= 2;
    return {
      region: at.closest('.topLine, .margin, .centre')?.className ?? '',
      name: at.getAttribute('aria-label') ?? at.textContent ?? at.tagName,
      nth: [...document.querySelectorAll(at.tagName)].indexOf(at),
      ring: at === document.body || ringed(style) || ringed(after),
      covered: at !== document.body && top !== null && !at.contains(top) && !top.contains(at),
    };
  });
}

describe('the way out', () => {
  it('leads to the start page with everything kept', async () => {
    const sentence = await topSentence(program);
    expect(sentence).toContain('After the repair');
    await press('Control+w');
    await program.page.locator('.startPage').waitFor();
    expect(await seen(program.page.locator('.startLists'))).toContain('Van 14 (invented)');
    expectNoErrors(program);
  });
});
