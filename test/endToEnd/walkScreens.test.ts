// Every screen of the real program, in both themes: axe finds nothing on any of them (usability A1).

import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import '../../renderer/shell/shell.ts'; // what window.shell is
import { axeFaults } from '../support/axeFaults.ts';
import { everyScreen } from '../support/everyScreen.ts';
import { launchProgram, type Program } from '../support/launchProgram.ts';
import { choose, expectNoErrors, openByDialog } from '../support/walkSteps.ts';

let program: Program;

afterEach(() => program.close());

describe.each(['light', 'dark'] as const)('in the %s theme', (theme) => {
  it('axe finds nothing on any screen', async () => {
    program = await launchProgram({ size: { width: 1280, height: 800 } });
    await program.settled();
    await program.page.evaluate(async (wanted) => {
      const settings = await window.shell.settings(null);
      await window.shell.saveSettings({ ...settings, theme: wanted });
    }, theme);
    await program.page.reload();
    await program.page.locator(`html[data-theme="${theme}"]`).waitFor();
    const faults: string[] = [];
    const bundle = join(program.dataFolder, 'van.tailtrace-bundle');
    await program.answerSaveDialogs(bundle);
    const stage = {
      page: program.page,
      choose: (id: string) => choose(program, id),
      settled: program.settled,
      openBundle: () => openByDialog(program, bundle),
    };
    await everyScreen(stage, async (name) => {
      for (const fault of await axeFaults(program.page, true)) faults.push(`${name}: ${fault}`);
    });
    expect(faults).toEqual([]);
    expectNoErrors(program);
  });
});
