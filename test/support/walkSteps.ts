// Steps of a person through the real program, for the walks in test/endToEnd.

import type { Locator } from 'playwright';
import { expect } from 'vitest';
import type { Program } from './launchProgram.ts';

/** Chooses a command in the menu bar, as a hand would. */
export async function choose({ app }: Program, id: string): Promise<void> {
  await app.evaluate(({ Menu }, wanted) => {
    const item = Menu.getApplicationMenu()?.getMenuItemById(wanted);
    if (item == null) throw new Error(`The menu bar has no ${wanted}.`);
    item.click();
  }, id);
}

/** Opens a sample drive from the start page and waits until its offered window is scored. */
export async function openSample(program: Program, name: string): Promise<void> {
  await program.page.locator(`[data-sample="${name}"]`).click();
  await program.page.locator('.report .result').first().waitFor();
  await program.settled();
}

/** Takes the offer that is being looked at. */
export async function acceptOffer(program: Program): Promise<void> {
  await program.page.locator('.margin.right [data-command="window.accept"]').click();
  await program.page.locator('.margin.right .reportHead', { hasText: 'offer accepted' }).waitFor();
  await program.settled();
}

/** Opens files through the dialog, which is answered with these paths. */
export async function openByDialog(program: Program, ...paths: readonly string[]): Promise<void> {
  await program.answerOpenDialogs(paths);
  await choose(program, 'file.open');
}

/** The dialog that is open, by its title. */
export function dialogOf({ page }: Program, title: string) {
  return page.getByRole('dialog', { name: title });
}

/** A temperature pair, typed as it is read off. */
export async function addReading(program: Program, inlet: string, outlet: string, unit: 'C' | 'F'): Promise<void> {
  await choose(program, 'vehicle.addReading');
  const dialog = dialogOf(program, 'Temperature reading');
  await dialog.getByLabel('Unit of the instrument').selectOption(unit);
  await dialog.getByRole('textbox', { name: 'Converter inlet' }).fill(inlet);
  await dialog.getByRole('textbox', { name: 'Converter outlet' }).fill(outlet);
  await dialog.getByRole('textbox', { name: 'Engine speed' }).fill('2300');
  await dialog.getByRole('textbox', { name: 'Emissivity' }).fill('0,95');
  await dialog.getByRole('button', { name: 'Add reading' }).click();
  await dialog.waitFor({ state: 'hidden' });
}

/** A note at the cursor, or in the middle of what is seen. */
export async function addNote(program: Program, words: string): Promise<void> {
  await choose(program, 'window.note');
  await program.page.getByRole('dialog').getByLabel('Words').fill(words);
  await program.page.getByRole('button', { name: 'Done' }).click();
  await listOf(program, 'Notes').getByText(words.slice(0, 12)).waitFor();
  await program.settled();
}

/** A list of the vehicle margin. */
export function listOf({ page }: Program, title: string) {
  return page.locator('.margin.left').getByRole('region', { name: title });
}

/** The sentence at the top of the page. */
export async function topSentence({ page }: Program): Promise<string> {
  return seen(page.getByRole('heading', { level: 1 }));
}

/** The text of an element as it is seen, with its line ends; spaces that keep a line together read as spaces. */
export async function seen(locator: Locator): Promise<string> {
  await locator.first().waitFor();
  const [text = ''] = await locator.first().allInnerTexts();
  return text.replaceAll('\u00a0', ' ');
}

/** Everything the record and the view hold, for comparing a restart with what was left. */
export async function recordAndView({ page }: Program) {
  return page.evaluate(async () => {
    const [entry] = await window.shell.listVehicles(null);
    return window.shell.loadVehicle({ id: entry?.id ?? '' });
  });
}

/** Ends a walk: nothing was said on the console, no error went uncaught. */
export function expectNoErrors({ errors }: Program): void {
  expect(errors).toEqual([]);
}
