import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../../../core/bridge/commandList.ts';
import {
  commandOfKey,
  type KeyPlace,
  keysOf,
  keyWords,
  type PressedKey,
} from '../../../../renderer/commands/keyMap.ts';

const NOWHERE: KeyPlace = { inPane: false, inText: false, singleKeys: true, mac: false };
const PANE: KeyPlace = { ...NOWHERE, inPane: true };
const TEXT: KeyPlace = { ...NOWHERE, inText: true };

/** "ctrl+shift+Z" pressed. */
function press(words: string): PressedKey {
  const names = words === '+' ? ['+'] : words.split(/\+(?=.)/);
  const has = (name: string): boolean => names.includes(name);
  return {
    key: names.at(-1) ?? '',
    ctrlKey: has('ctrl'),
    metaKey: has('meta'),
    altKey: has('alt'),
    shiftKey: has('shift'),
  };
}

describe('a sign on the third level of a keyboard', () => {
  it.each([
    ['ctrl+alt+[', false, 'window.startHere'],
    ['ctrl+alt+]', false, 'window.endHere'],
    ['alt+[', true, 'window.startHere'],
    ['[', false, 'window.startHere'],
  ])('%s means the sign (mac: %s)', (key, mac, id) => {
    expect(commandOfKey(press(key), { ...PANE, mac })).toBe(id);
  });

  it.each([
    ['alt+[', false],
    ['ctrl+[', false],
    ['ctrl+alt+m', false],
    ['ctrl+alt+d', false],
  ])('%s means nothing', (key, mac) => {
    expect(commandOfKey(press(key), { ...PANE, mac })).toBeNull();
  });
});

describe('keys that everybody knows', () => {
  it.each([
    ['ctrl+o', 'file.open'],
    ['ctrl+s', 'file.save'],
    ['ctrl+z', 'edit.undo'],
    ['ctrl+shift+Z', 'edit.redo'],
    ['ctrl+y', 'edit.redo'],
    ['ctrl+f', 'edit.find'],
    ['ctrl+p', 'file.print'],
    ['ctrl+,', 'file.settings'],
    ['F1', 'help.keys'],
    ['F2', 'vehicle.rename'],
    ['F8', 'view.margins'],
    ['F11', 'view.fullScreen'],
    ['Delete', 'edit.delete'],
    ['alt+ArrowLeft', 'view.back'],
    ['ctrl+=', 'view.in'],
    ['ctrl++', 'view.in'],
    ['ctrl+-', 'view.out'],
  ])('%s is %s', (key, id) => {
    expect(commandOfKey(press(key), NOWHERE)).toBe(id);
  });

  it('are Command and not Control on a Mac', () => {
    expect(commandOfKey(press('meta+o'), { ...NOWHERE, mac: true })).toBe('file.open');
    expect(commandOfKey(press('ctrl+o'), { ...NOWHERE, mac: true })).toBeNull();
  });
});

describe('single letters', () => {
  const single = COMMANDS.flatMap(({ id, key, otherKey }) =>
    [key, otherKey].flatMap((one) => (one != null && one.length === 1 ? [[one, id] as const] : [])),
  );

  it.each(single)('%s runs %s in a pane only', (key, id) => {
    expect(commandOfKey(press(key), PANE)).toBe(id);
    expect(commandOfKey(press(key), NOWHERE)).toBeNull();
    expect(commandOfKey(press(key), TEXT)).toBeNull();
  });

  it.each(single)('%s does nothing where single keys are turned off', (key) => {
    expect(commandOfKey(press(key), { ...PANE, singleKeys: false })).toBeNull();
  });
});

describe('while text is typed', () => {
  it.each(['ctrl+z', 'ctrl+y', 'Delete', 'Backspace', 'Enter', 'Home', 'End', 'n', '+', '['])(
    '%s belongs to the text',
    (key) => {
      expect(commandOfKey(press(key), { ...TEXT, inPane: true })).toBeNull();
    },
  );

  it('commands that no text knows still run', () => {
    expect(commandOfKey(press('ctrl+s'), TEXT)).toBe('file.save');
    expect(commandOfKey(press('F8'), TEXT)).toBe('view.margins');
  });
});

describe('a key in words', () => {
  it.each([
    ['CmdOrCtrl+Shift+E', 'Ctrl+Shift+E', '⇧⌘E'],
    ['CmdOrCtrl+Plus', 'Ctrl++', '⌘+'],
    ['Alt+Left', 'Alt+←', '⌥←'],
    ['+', '+', '+'],
    ['F8', 'F8', 'F8'],
  ])('%s reads %s, on a Mac %s', (accelerator, words, macWords) => {
    expect(keyWords(accelerator, false)).toBe(words);
    expect(keyWords(accelerator, true)).toBe(macWords);
  });

  it('is found by pressing what it says', () => {
    for (const entry of COMMANDS) {
      for (const [index, words] of keysOf(entry, false).entries()) {
        const pressed = words.toLowerCase().replace('←', 'ArrowLeft').replace('→', 'ArrowRight').replace('−', '-');
        const place = { ...PANE, inPane: true };
        const id = commandOfKey(press(pressed.length === 1 ? words.replace('−', '-') : fixCase(pressed)), place);
        expect(id, `${entry.id} by key ${index}`).toBe(entry.id);
      }
    }
  });
});

/** "ctrl+shift+e" with the key itself as an event spells it. */
function fixCase(pressed: string): string {
  return pressed.replace(/(^|\+)(delete|backspace|enter|home|end|f\d+|arrowleft|arrowright)$/, (_whole, plus, key) => {
    const names: Record<string, string> = { arrowleft: 'ArrowLeft', arrowright: 'ArrowRight' };
    return plus + (names[key] ?? key.charAt(0).toUpperCase() + key.slice(1));
  });
}
