import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../../../core/bridge/commandList.ts';
import { openPicked } from '../../../../renderer/actions/openCaptures.ts';
import { DEEDS } from '../../../../renderer/commands/index.ts';
import { runCommand } from '../../../../renderer/commands/runCommand.ts';
import { shownView } from '../../../../renderer/state/selectors/shown.ts';
import { startWindow } from '../../../support/windowProgram.ts';

describe('the list of commands', () => {
  it('has a deed for every command, and no deed without one', () => {
    expect([...DEEDS.keys()].sort()).toEqual(COMMANDS.map(({ id }) => id).sort());
  });

  it('has no key twice', () => {
    const keys = COMMANDS.flatMap(({ key, otherKey }) => [key, otherKey ?? null]).filter((key) => key !== null);
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });
});

describe.each(COMMANDS.map(({ id }) => id))('%s', (id) => {
  it('says in a sentence why it cannot run, where nothing is open', async () => {
    const { program } = await startWindow();
    const state = DEEDS.get(id)?.state(program);
    if (state?.enabled === false) expect(state.reason).toMatch(/^[A-Z].{8,}\.$/);
    else expect(state?.reason).toBeNull();
  });

  it('says its reason in the status line where it is asked for all the same', async () => {
    const { program } = await startWindow();
    const reason = DEEDS.get(id)?.state(program).reason ?? null;
    if (reason === null) return;
    runCommand(program, id);
    expect(program.notices.getState().words).toBe(reason);
  });
});

describe('the menu bar', () => {
  it('hears of a command that can run as soon as something is scored, though nothing else changes', async () => {
    const window = await startWindow();
    const told: string[] = [];
    const { program } = window;
    Object.assign(program.shell, {
      setCommandStates: async (states: readonly { id: string; enabled: boolean }[]) => {
        told.push(...states.filter(({ id }) => id === 'file.exportBundle').map(({ enabled }) => String(enabled)));
        return null;
      },
    });
    await openPicked(program, [window.sample('van-before')]);
    await window.quiet();
    const { score } = program.wholeScore.getState();
    program.wholeScore.setState({ score: null });
    await window.quiet();
    program.wholeScore.setState({ score });
    await window.quiet();
    expect(told.slice(-2)).toEqual(['false', 'true']);
  });
});

describe('with a capture open', () => {
  it('zooms about the cursor, and about the middle where there is none', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.sample('van-before')]);
    await window.quiet();
    const { program } = window;
    program.workspace.getState().look({ startS: 100, endS: 200 }, true);
    runCommand(program, 'view.in');
    expect(shownView(program)?.visible).toEqual({ startS: 125, endS: 175 });
    program.workspace.getState().cursor(125);
    runCommand(program, 'view.in');
    expect(shownView(program)?.visible).toEqual({ startS: 125, endS: 150 });
    runCommand(program, 'view.back');
    expect(shownView(program)?.visible).toEqual({ startS: 125, endS: 175 });
  });

  it('folds both margins with one command and unfolds them with the same', async () => {
    const { program } = await startWindow();
    runCommand(program, 'view.margins');
    expect(program.workspace.getState()).toMatchObject({ leftMargin: false, rightMargin: false });
    runCommand(program, 'view.margins');
    expect(program.workspace.getState()).toMatchObject({ leftMargin: true, rightMargin: true });
  });

  it('puts the sensors apart and over each other, and leaves the other panes alone', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.sample('van-before')]);
    await window.quiet();
    const panes = () => shownView(window.program)?.panes.map(({ channelIds }) => channelIds.length);
    expect(panes()).toEqual([2, 1, 1]);
    runCommand(window.program, 'view.overlay');
    expect(panes()).toEqual([1, 1, 1, 1]);
    runCommand(window.program, 'view.overlay');
    expect(panes()).toEqual([2, 1, 1]);
    const shares = shownView(window.program)?.panes.map(({ share }) => share) ?? [];
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10);
  });

  it('copies values with tabs between them and units beside them', async () => {
    const window = await startWindow();
    await openPicked(window.program, [window.sample('van-before')]);
    await window.quiet();
    window.program.workspace.getState().cursor(60);
    await DEEDS.get('edit.copyValues')?.run(window.program);
    const copied = String(window.standIn.exported.at(-1)?.content);
    expect(copied.split('\n')[0]).toBe('Channel\tValue\tUnit\tSampled at, s');
    expect(copied).toMatch(/Upstream oxygen sensor, bank.1\t\d\.\d{3}\tV\t/);
  });
});
