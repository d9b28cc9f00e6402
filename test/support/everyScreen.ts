// Every screen of the window, one after another, from the start page on: for whoever wants to look at all of them.

import type { Page } from 'playwright';

/** The window on a shell of any kind. */
export interface Stage {
  readonly page: Page;
  /** Runs a command as the menu bar does. */
  choose(id: string): Promise<void>;
  settled(): Promise<void>;
  /** Opens the bundle that was written last. */
  openBundle(): Promise<void>;
}

/** Dialogs by the command that opens them, with their titles. */
const DIALOGS: readonly (readonly [command: string, title: string | RegExp])[] = [
  ['vehicle.addReading', 'Temperature reading'],
  ['window.note', /^Note/],
  ['vehicle.list', 'Vehicles'],
  ['vehicle.delete', /^Delete /],
  ['file.openSample', 'Sample drives'],
  ['view.channels', 'Channels'],
  ['window.times', 'Hold 1'],
  ['file.settings', 'Settings'],
  ['edit.find', 'Find a command'],
  ['help.keys', 'Keys'],
  ['help.measures', 'What the measures mean'],
  ['help.cautions', 'Cautions'],
  ['help.about', 'About Tailtrace'],
  ['file.exportSheet', 'Evidence sheet'],
  ['file.exportPicture', 'Picture of the traces'],
  ['vehicle.columns', 'Which column is what'],
];

/** Parts of the vehicle's details. */
const DETAILS = ['Identity', 'Codes and complaint', 'Exhaust', 'Warranty and costs'];

/** Shows each screen and lets `look` see it, by name. Begins on the start page, ends with a blind reading. */
export async function everyScreen(stage: Stage, look: (name: string) => Promise<void>): Promise<void> {
  const { page, choose, settled } = stage;
  await page.locator('[data-sample]').first().waitFor();
  await settled();
  await look('start page');
  await page.locator('[data-sample="van-before"]').click();
  await page.locator('.margin.right .result').first().waitFor();
  await settled();
  await look('an offer');
  await accept(stage);
  await look('the finding of a window');
  for (const tab of ['Vehicle', 'Capture']) {
    await page.getByRole('tab', { name: tab }).click();
    await look(`the finding margin, ${tab.toLowerCase()}`);
  }
  await choose('view.table');
  await page.locator('.valuesTable').waitFor();
  await look('values as a table');
  await choose('view.table');
  await page.locator('.valuesTable').waitFor({ state: 'hidden' });
  await everyDialog(stage, look);
  await opinions(stage, look);
  await bundle(stage, look);
  await choose('view.margins');
  await page.locator('.margin').first().waitFor({ state: 'hidden' });
  await look('paper only');
  await choose('view.margins');
  await page.locator('.margin.right').waitFor();
  await comparison(stage);
  await look('a comparison');
  await blindReading(stage, look);
}

async function accept({ page, settled }: Stage): Promise<void> {
  await page.locator('.margin.right [data-command="window.accept"]').click();
  await page.locator('.margin.right .reportHead', { hasText: 'offer accepted' }).waitFor();
  await settled();
}

async function everyDialog({ page, choose }: Stage, look: (name: string) => Promise<void>): Promise<void> {
  for (const [command, title] of DIALOGS) {
    await choose(command);
    const dialog = page.getByRole('dialog', { name: title });
    await dialog.waitFor();
    if (command === 'file.exportSheet') await dialog.locator('.sheetPreview article').waitFor();
    if (command === 'file.exportPicture') await dialog.getByRole('img').waitFor();
    await look(command);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
  }
  await choose('vehicle.details');
  for (const part of DETAILS) {
    await page.getByRole('tab', { name: part }).click();
    await look(`vehicle.details, ${part.toLowerCase()}`);
  }
  await page.keyboard.press('Escape');
}

/** An opinion before and after it is signed, an answer beside it, and its withdrawal. */
async function opinions({ page, choose }: Stage, look: (name: string) => Promise<void>): Promise<void> {
  await choose('vehicle.sign');
  const sheet = page.getByRole('dialog', { name: 'Sign an opinion' });
  const read = page.getByRole('dialog', { name: 'Opinions' });
  await sheet.getByRole('button', { name: 'Sign', exact: true }).click();
  await sheet.getByRole('alert').waitFor();
  await look('vehicle.sign');
  await signOpinion(page, { finding: 'Does not store oxygen', sure: '85', reasons: 'The rear sensor follows.' });
  await read.locator('[data-chain="whole"]').waitFor();
  await look('vehicle.opinions');
  await read.getByRole('button', { name: 'Answer it' }).click();
  await sheet.getByLabel('Where you disagree').selectOption('onThreshold');
  await look('an answer to an opinion');
  await signOpinion(page, { finding: 'Cannot tell yet', sure: '60', reasons: 'Smoke the exhaust first.' });
  await read.locator('[data-chain="whole"]').nth(1).waitFor();
  await look('two opinions side by side');
  await read.getByRole('button', { name: 'Withdraw it' }).click();
  const withdraw = page.getByRole('dialog', { name: 'Withdraw an opinion' });
  await withdraw.getByLabel('Why').fill('The leak was found.');
  await look('withdrawing an opinion');
  await withdraw.getByRole('button', { name: 'Withdraw', exact: true }).click();
  await read.getByText('Withdrawn by First reader').waitFor();
  await read.getByRole('button', { name: 'Done' }).click();
  await read.waitFor({ state: 'hidden' });
  await page.locator('.margin.left').getByText('Withdrawn:').scrollIntoViewIfNeeded();
  await look('opinions in the margin');
}

/** Fills the open sheet of an opinion and signs it. */
export async function signOpinion(
  page: Page,
  { finding, sure, reasons }: { finding: string; sure: string; reasons: string },
): Promise<void> {
  const sheet = page.getByRole('dialog', { name: 'Sign an opinion' });
  await sheet.getByRole('radio', { name: finding }).check();
  await sheet.getByLabel('How sure you are of it').fill(sure);
  await sheet.getByLabel('Reasons').fill(reasons);
  await sheet.getByLabel('Your name').fill('First reader');
  await sheet.getByRole('button', { name: 'Sign', exact: true }).click();
  await page.getByRole('dialog', { name: 'Opinions' }).waitFor();
}

/** A bundle before and after it was written, and as a colleague opens it. */
async function bundle({ page, choose, openBundle }: Stage, look: (name: string) => Promise<void>): Promise<void> {
  await choose('file.exportBundle');
  const dialog = page.getByRole('dialog', { name: 'Bundle for a second reader' });
  const write = dialog.getByRole('button', { name: 'Write the bundle' });
  await dialog.locator('button.main:not([aria-disabled])').waitFor();
  await look('file.exportBundle');
  await write.click();
  await dialog.locator('[data-manifest]').waitFor();
  await look('a bundle that was written');
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  await openBundle();
  const received = page.getByRole('dialog', { name: /^Bundle: / });
  await received.waitFor();
  await look('a bundle that was opened');
  await received.getByRole('button', { name: 'Leave it' }).click();
  await received.waitFor({ state: 'hidden' });
}

async function comparison(stage: Stage): Promise<void> {
  const { page, choose, settled } = stage;
  await choose('file.openSample');
  await page.getByRole('dialog').locator('[data-sample="van-after"]').click();
  await page.locator('.margin.right [data-command="window.accept"]').waitFor();
  await settled();
  await accept(stage);
  await choose('window.compare');
  await page.getByRole('button', { name: 'Compare', exact: true }).click();
  await page.locator('.margin.right table').waitFor();
  await settled();
}

/** A bundle that is read blind: nothing marked yet, then a window and its hidden finding. */
async function blindReading({ page, choose, settled, openBundle }: Stage, look: (name: string) => Promise<void>) {
  await openBundle();
  const received = page.getByRole('dialog', { name: /^Bundle: / });
  await received.getByRole('radio', { name: /^Blind first/ }).check();
  await look('a bundle that will be read blind');
  await received.getByRole('button', { name: /^Take it in/ }).click();
  await received.waitFor({ state: 'hidden' });
  await page.locator('.traceStack figure').first().waitFor();
  await settled();
  await look('a blind reading');
  await choose('window.mark');
  await page.locator('.margin.right').getByText('is hidden while you read blind').waitFor();
  await look('a window in a blind reading');
}
