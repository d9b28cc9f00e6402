import { describe, expect, it, vi } from 'vitest';
import { sheetFormat } from '../../../../core/evidence/formats/index.ts';
import type { Sheet } from '../../../../core/evidence/sheet.ts';
import { NOTHING_PRIVATE } from '../../../../core/evidence/sheetInput.ts';
import { failed } from '../../../../core/service/serviceProblems.ts';
import { printSheet } from '../../../../renderer/actions/exportSheet.ts';
import { makeSheet } from '../../../../renderer/actions/makeSheet.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { acceptOffer, offersOfShown } from '../../../../renderer/actions/windows.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { startWindow } from '../../../support/windowProgram.ts';

async function openVan() {
  const window = await startWindow();
  await openPicked(window.program, [window.sample('van-before')]);
  await window.quiet();
  const { program } = window;
  const acceptHold = () => {
    acceptOffer(program, offersOfShown(program).find((one) => one.window.kind === 'hold')?.id ?? '');
  };
  return { ...window, acceptHold };
}

const textOf = (sheet: Sheet | null) => (sheet === null ? '' : (sheetFormat('md')?.write(sheet) ?? ''));

describe('a sheet that is asked for right after a window was marked', () => {
  it('waits for the finding of that window, and is the one that is made later', async () => {
    const { program, quiet, acceptHold } = await openVan();
    expect(textOf(await makeSheet(program, NOTHING_PRIVATE))).not.toContain('Hold 1');
    acceptHold();
    const atOnce = textOf(await makeSheet(program, NOTHING_PRIVATE));
    expect(atOnce).toMatch(/Hold 1[\s\S]*Does not store/);
    await quiet();
    expect(atOnce).toBe(textOf(await makeSheet(program, NOTHING_PRIVATE)));
  });

  it('is none where the vehicle cannot be scored, however it was scored before', async () => {
    const { program, quiet, acceptHold } = await openVan();
    const { ask } = program.core;
    const refusing: typeof ask = (name, question, options) =>
      name === 'scoreVehicle' ? Promise.resolve(failed(name)) : ask(name, question, options);
    vi.spyOn(program.core, 'ask').mockImplementation(refusing);
    acceptHold();
    expect(await makeSheet(program, NOTHING_PRIVATE)).toBeNull();
    await quiet();
    await printSheet(program);
    expect(program.notices.getState().words).toBe('There is no finding, and so no sheet to print.');
  });

  it('says so where the comparison that is looked at cannot be on it', async () => {
    const { program, quiet, acceptHold } = await openVan();
    acceptHold();
    await quiet();
    const [id = ''] = Object.keys(recordOf(program.record.getState())?.windows ?? {});
    program.workspace.setState({ compare: { firstId: id, secondId: id, offsetS: 0 } });
    const { ask } = program.core;
    const refusing: typeof ask = (name, question, options) =>
      name === 'compare' ? Promise.resolve(failed(name)) : ask(name, question, options);
    vi.spyOn(program.core, 'ask').mockImplementation(refusing);
    expect(await makeSheet(program, NOTHING_PRIVATE)).not.toBeNull();
    expect(program.notices.getState().problems.map(({ place, problem }) => [place, problem.what])).toEqual([
      ['export', expect.stringMatching(/^The sheet holds no comparison: /)],
    ]);
  });
});
