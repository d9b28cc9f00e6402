import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../../../core/bridge/commandList.ts';
import { type PaneKey, paneKeyDeed } from '../../../../renderer/plot/paneKeys.ts';

const bare: PaneKey = { key: '', ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };
const press = (key: string, how: Partial<PaneKey> = {}) => paneKeyDeed({ ...bare, key, ...how });

describe('a key in a focused pane', () => {
  it.each([
    ['ArrowRight', {}, { kind: 'step', direction: 1, count: 1 }],
    ['ArrowLeft', {}, { kind: 'step', direction: -1, count: 1 }],
    ['ArrowLeft', { shiftKey: true }, { kind: 'step', direction: -1, count: 10 }],
    ['ArrowRight', { ctrlKey: true }, { kind: 'stop', direction: 1 }],
    ['ArrowLeft', { metaKey: true }, { kind: 'stop', direction: -1 }],
    ['PageUp', {}, { kind: 'pan', screens: -1 }],
    ['PageDown', {}, { kind: 'pan', screens: 1 }],
    ['Home', {}, { kind: 'end', direction: -1 }],
    ['End', {}, { kind: 'end', direction: 1 }],
    ['Escape', {}, { kind: 'drop' }],
  ] as const)('%s %j', (key, how, deed) => {
    expect(press(key, how)).toEqual(deed);
  });

  it('+ and − zoom in and out, and one undoes the other', () => {
    const [closer, wider] = [press('+', { shiftKey: true }), press('-')];
    if (closer?.kind !== 'zoom' || wider?.kind !== 'zoom') throw new Error('both zoom');
    expect(closer.factor).toBeLessThan(1);
    expect(closer.factor * wider.factor).toBeCloseTo(1, 12);
  });

  it.each([
    ['0', 'view.whole'],
    ['Backspace', 'view.back'],
    ['[', 'window.startHere'],
    [']', 'window.endHere'],
    ['Enter', 'window.mark'],
    ['n', 'window.next'],
    ['N', 'window.next'],
    ['g', 'view.guides'],
  ])('%s is the command %s', (key, id) => {
    expect(press(key)).toEqual({ kind: 'command', id });
  });

  it('every key of the list of commands that acts in a pane does something there', () => {
    for (const command of COMMANDS.filter((each) => each.inPane === true)) {
      const keys = [command.key, command.otherKey ?? null].flatMap((key) =>
        key === null || key.startsWith('CmdOrCtrl') ? [] : [key],
      );
      for (const key of keys) expect(press(key), command.id).not.toBeNull();
    }
  });

  it('leaves keys of the menu bar and of the system alone', () => {
    expect(press('z', { ctrlKey: true })).toBeNull();
    expect(press('0', { ctrlKey: true })).toBeNull();
    expect(press('ArrowLeft', { altKey: true })).toBeNull();
    expect(press('Tab')).toBeNull();
    expect(press('F6')).toBeNull();
  });
});
