// Two readers of one vehicle in the real program: sign, answer, come back tomorrow, hand it over.

import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { checkOpinions } from '../../core/opinions/chain.ts';
import { signOpinion } from '../support/everyScreen.ts';
import { launchProgram, makeDataFolder, type Program } from '../support/launchProgram.ts';
import {
  acceptOffer,
  choose,
  dialogOf,
  expectNoErrors,
  listOf,
  openSample,
  recordAndView,
  seen,
} from '../support/walkSteps.ts';

let dataFolder = '';
let work = '';
let program: Program;

const sha256 = async (text: string) => createHash('sha256').update(text).digest('hex');

beforeAll(async () => {
  dataFolder = await makeDataFolder();
  work = mkdtempSync(join(tmpdir(), 'tailtrace-opinions-'));
  program = await launchProgram({ dataFolder });
  await program.settled();
});
afterAll(async () => {
  await program.close();
  rmSync(work, { recursive: true, force: true });
  rmSync(dataFolder, { recursive: true, force: true });
});

async function signed() {
  const loaded = await recordAndView(program);
  if (!loaded.ok) throw new Error('the vehicle could not be read');
  return checkOpinions(loaded.record, sha256);
}

describe('signing', () => {
  it('asks for a finding of one’s own, and suggests none', async () => {
    await openSample(program, 'van-before');
    await acceptOffer(program);
    await choose(program, 'vehicle.sign');
    const dialog = dialogOf(program, 'Sign an opinion');
    expect(await dialog.getByRole('radio', { checked: true }).count()).toBe(0);
    expect(await dialog.getByRole('checkbox', { checked: true }).count()).toBe(1);
    await dialog.getByRole('button', { name: 'Sign', exact: true }).click();
    expect(await seen(dialog.getByRole('alert'))).toBe('Choose your finding.');
    expect(await seen(dialog)).toContain('It does not show who signed, or when');
  });

  it('keeps what was begun when the dialog is left and opened again', async () => {
    const dialog = dialogOf(program, 'Sign an opinion');
    await dialog.getByLabel('Reasons').fill('The rear sensor follows the front one.');
    await program.page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    await choose(program, 'vehicle.sign');
    expect(await dialog.getByLabel('Reasons').inputValue()).toBe('The rear sensor follows the front one.');
  });

  it('puts it among the opinions, and undo goes no further back', async () => {
    await signOpinion(program.page, { finding: 'Does not store oxygen', sure: '85', reasons: 'The rear follows.' });
    await dialogOf(program, 'Opinions').getByRole('button', { name: 'Done' }).click();
    const list = await seen(listOf(program, 'Opinions'));
    expect(list).toContain('Does not store oxygen');
    expect(list).toContain('85 % sure: very likely');
    expect(list).toContain('chain whole');
    await choose(program, 'edit.undo');
    await program.page.getByText('An opinion was signed: undo goes no further back.').waitFor();
    expect(await seen(listOf(program, 'Windows'))).toContain('Hold 1');
  });
});

describe('coming back', () => {
  it('finds the opinion, whole', async () => {
    await program.settled();
    expectNoErrors(program);
    await program.close();
    program = await launchProgram({ dataFolder });
    await listOf(program, 'Opinions').getByText('chain whole').waitFor();
    await program.settled();
    const links = await signed();
    expect(links.map(({ state, sameRecord }) => [state, sameRecord])).toEqual([['whole', true]]);
  });

  it('an answer lies beside it, with what differs first', async () => {
    await listOf(program, 'Opinions')
      .getByRole('button', { name: /Does not store oxygen/ })
      .click();
    const read = dialogOf(program, 'Opinions');
    await read.getByRole('button', { name: 'Answer it' }).click();
    const dialog = dialogOf(program, 'Sign an opinion');
    expect(await dialog.getByLabel('Your name').inputValue()).toBe('First reader');
    await dialog.getByLabel('Where you disagree').selectOption('onThreshold');
    await signOpinion(program.page, { finding: 'Cannot tell yet', sure: '60', reasons: 'Smoke the exhaust first.' });
    await read.locator('[data-chain="whole"]').nth(1).waitFor();
    expect(await seen(read)).toMatch(/What differs first: .*readers judge differently/);
    expect(await read.locator('article').count()).toBe(2);
    await read.getByRole('button', { name: 'Done' }).click();
    expect((await signed()).map(({ state }) => state)).toEqual(['whole', 'whole']);
  });
});

describe('handing it over', () => {
  it('the sheet holds both opinions, and the names only where they are ticked in', async () => {
    const place = join(work, 'sheet.html');
    await program.answerSaveDialogs(place);
    await choose(program, 'file.exportSheet');
    const dialog = dialogOf(program, 'Evidence sheet');
    const write = async () => {
      await dialog.locator('.sheetPreview article').waitFor();
      await dialog.getByRole('button', { name: 'HTML: write the sheet' }).click();
      await program.page.getByText('sheet.html was written.').waitFor({ state: 'attached' });
      return readFileSync(place, 'utf8');
    };
    const without = await write();
    expect(without).toContain('Smoke the exhaust first.');
    expect(without).toMatch(/Reader 1, \d{4}-\d{2}-\d{2}/);
    expect(without).not.toContain('First reader, ');
    await dialog.getByLabel('Names under signed opinions').check();
    await dialog.locator('.sheetPreview').getByText('First reader, ').first().waitFor();
    const named = await write();
    expect(named).toContain('First reader, ');
    expect(named).toContain('does not show who signed, or when');
    await program.page.keyboard.press('Escape');
    expectNoErrors(program);
  });
});
