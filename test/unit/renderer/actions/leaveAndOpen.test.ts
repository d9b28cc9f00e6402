// Files that are opened while another vehicle is closed or opened: which reading goes on, and whose capture it becomes.

import { describe, expect, it } from 'vitest';
import { renameVehicle } from '../../../../core/record/edits/vehicle.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { openVehicle } from '../../../../renderer/actions/openVehicle.ts';
import { goToStart } from '../../../../renderer/actions/vehicles.ts';
import { recordOf } from '../../../../renderer/state/recordStore.ts';
import { startWindow, type TestWindow } from '../../../support/windowProgram.ts';

const HEAD = 'Time (s),O2S B1S1 (V)\n';
const SMALL = `${HEAD}0,0.1\n1,0.8\n2,0.1\n`;
/** Long enough to be read in several turns. */
const LONG = `${HEAD}${Array.from({ length: 60_000 }, (_, i) => `${i},0.${i % 9}`).join('\n')}\n`;

const openNames = ({ program }: TestWindow): string[] =>
  Object.values(recordOf(program.record.getState())?.captures ?? {}).map(({ name }) => name);

const keptNames = async ({ program }: TestWindow): Promise<string[]> =>
  (await program.shell.listVehicles(null)).map(({ name, captures }) => `${name} ${captures}`).sort();

describe('a file that is opened at once after its vehicle was closed', () => {
  it.each([
    ['short', `${HEAD}0,0.2\n1,0.7\n`],
    ['long', LONG],
  ])('is opened as a vehicle of its own, however soon it is read: %s', async (_length, content) => {
    const window = await startWindow();
    const { program } = window;
    await openPicked(program, [window.file('first.csv', SMALL)]);
    const closing = goToStart(program);
    await Promise.all([closing, openPicked(program, [window.file('second.csv', content)])]);
    await window.quiet();
    expect(openNames(window)).toEqual(['second.csv']);
    expect(await keptNames(window)).toEqual(['first 1', 'second 1']);
  });

  it('is not called off where the vehicle cannot be left, and joins it', async () => {
    const window = await startWindow();
    const { program } = window;
    await openPicked(program, [window.file('first.csv', SMALL)]);
    const problem = { id: 'notWritten.ENOSPC', what: 'The disk is full.', where: 'x', doNext: 'Make room.' };
    const { saveVehicle } = program.shell;
    Object.assign(program.shell, { saveVehicle: async () => ({ saved: false, problem }) });
    await Promise.all([goToStart(program), openPicked(program, [window.file('second.csv', LONG)])]);
    Object.assign(program.shell, { saveVehicle });
    expect(openNames(window)).toEqual(['first.csv', 'second.csv']);
  });
});

describe('a drag whose end was never heard', () => {
  const dragged = async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.file('first.csv', SMALL)]);
    await window.quiet();
    window.program.record.getState().beginGesture('move window');
    window.program.record.getState().edit(renameVehicle('Van 3'));
    return window;
  };

  it('is kept when its vehicle is left', async () => {
    const window = await dragged();
    await goToStart(window.program);
    expect(await keptNames(window)).toEqual(['Van 3 1']);
  });

  it('is kept when the window is closed', async () => {
    const window = await dragged();
    let closed = (): void => undefined;
    const ready = new Promise<void>((resolve) => {
      closed = resolve;
    });
    Object.assign(window.program.shell, { readyToClose: async () => closed() });
    window.standIn.fire('closing', null);
    await ready;
    expect(await keptNames(window)).toEqual(['Van 3 1']);
  });
});

describe('a file that is being read', () => {
  it('goes on when another, opened before it on the start page, becomes a vehicle; it joins that', async () => {
    const window = await startWindow();
    const { program } = window;
    const first = openPicked(program, [window.file('first.csv', SMALL)]);
    await Promise.all([first, openPicked(program, [window.file('second.csv', LONG)])]);
    await window.quiet();
    expect(openNames(window)).toEqual(['first.csv', 'second.csv']);
  });

  it('for a vehicle is called off when that is closed, with the files behind it, and none turns up elsewhere', async () => {
    const window = await startWindow();
    const { program } = window;
    await openPicked(program, [window.file('other.csv', SMALL)]);
    const other = recordOf(program.record.getState())?.id ?? '';
    await goToStart(program);
    await openPicked(program, [window.file('first.csv', `${SMALL}3,0.1\n`)]);
    const opening = openPicked(program, [window.file('second.csv', LONG), window.file('third.csv', `${LONG}0,0`)]);
    await Promise.all([openVehicle(program, other), opening]);
    await window.quiet();
    expect(openNames(window)).toEqual(['other.csv']);
    expect(await keptNames(window)).toEqual(['first 1', 'other 1']);
    expect(program.notices.getState().words).toBe('Opening third.csv was cancelled.');
  });
});
