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

  it('leaves keys that are commands to the key map of the program', () => {
    const own = new Set(['+', '-', 'Home', 'End']);
    for (const command of COMMANDS.filter((each) => each.inPane === true)) {
      for (const key of [command.key, command.otherKey ?? null]) {
        if (key !== null && !own.has(key)) expect(press(key), command.id).toBeNull();
      }
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
