import type { MenuItemConstructorOptions } from 'electron';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../../../core/bridge/commandList.ts';
import { type CommandState, type MenuParts, menuTemplate, type Platform } from '../../../../main/menu/buildMenu.ts';

type Item = MenuItemConstructorOptions;
const PLATFORMS: readonly Platform[] = ['linux', 'win32', 'darwin'];

const capture = {
  token: 'x'.repeat(32),
  name: 'van & car.csv',
  bytes: 1,
  sample: false,
  sha256: 'ab'.repeat(32),
  there: true,
};

function menu(platform: Platform, more: Partial<MenuParts> = {}) {
  const ran: string[] = [];
  const opened: string[] = [];
  const template = menuTemplate({
    platform,
    programName: 'Tailtrace',
    states: new Map(),
    recent: [],
    run: (id) => ran.push(id),
    openRecent: ({ name }) => opened.push(name),
    ...more,
  });
  return { template, ran, opened, items: template.flatMap((top) => itemsOf(top)) };
}

function itemsOf({ submenu }: Item): Item[] {
  return Array.isArray(submenu) ? submenu.flatMap((item) => [item, ...itemsOf(item)]) : [];
}

const press = (item: Item | undefined) => Reflect.apply(Object(item).click, null, []);
const labels = (template: readonly Item[]) => template.map(({ label }) => label?.replace('&', ''));

describe('C1: the menu bar', () => {
  it.each(PLATFORMS)('%s: every command stands in exactly one menu, and runs itself', (platform) => {
    const { items, ran } = menu(platform);
    for (const { id } of COMMANDS) {
      const found = items.filter((item) => item.id === id);
      expect(found, id).toHaveLength(1);
      press(found[0]);
      expect(ran.at(-1)).toBe(id);
    }
  });

  it('has the menus that each system expects', () => {
    const six = ['File', 'Edit', 'View', 'Vehicle', 'Window', 'Help'];
    expect(labels(menu('linux').template)).toEqual(six);
    expect(labels(menu('win32').template)).toEqual(six);
    expect(labels(menu('darwin').template)).toEqual(['Tailtrace', ...six]);
  });

  it('on macOS the program’s own menu holds About, Settings and Quit; elsewhere File holds Quit', () => {
    const own = itemsOf(menu('darwin').template[0] ?? {});
    expect(own.map(({ id, role }) => id ?? role).filter(Boolean)).toEqual([
      'help.about',
      'file.settings',
      'services',
      'hide',
      'hideOthers',
      'unhide',
      'quit',
    ]);
    expect(itemsOf(menu('linux').template[0] ?? {}).at(-1)?.role).toBe('quit');
  });

  it.each(PLATFORMS)('%s: text is cut, copied and pasted by the system', (platform) => {
    const roles = menu(platform).items.map(({ role }) => role);
    expect(roles).toEqual(expect.arrayContaining(['cut', 'copy', 'paste', 'selectAll', 'quit']));
  });

  it.each(PLATFORMS)('%s: no rule begins, ends or follows a rule', (platform) => {
    for (const top of menu(platform).template) {
      const kinds = (Array.isArray(top.submenu) ? top.submenu : []).map(({ type }) => type === 'separator');
      expect(kinds[0]).toBe(false);
      expect(kinds.at(-1)).toBe(false);
      expect(kinds.some((rule, i) => rule && kinds[i + 1] === true)).toBe(false);
    }
  });

  it('shows keys without taking them from a field that is being typed in', () => {
    for (const platform of ['linux', 'win32'] as const) {
      for (const item of menu(platform).items.filter(({ accelerator }) => accelerator !== undefined)) {
        expect(item.registerAccelerator).toBe(false);
      }
    }
    const taken = menu('darwin').items.flatMap(({ id, accelerator }) =>
      id === undefined || accelerator === undefined ? [] : [String(accelerator)],
    );
    expect(taken.filter((key) => !key.includes('+') && !/^F\d+$/.test(key))).toEqual([]);
  });

  it('follows what the window says of a command', () => {
    const states = new Map<string, CommandState>([
      ['edit.undo', { enabled: true, checked: false, words: 'Undo: move window' }],
      ['edit.redo', { enabled: false, checked: false, words: null }],
      ['view.guides', { enabled: true, checked: true, words: null }],
    ]);
    const { items } = menu('linux', { states });
    const found = (id: string) => items.find((item) => item.id === id);
    expect(found('edit.undo')).toMatchObject({ label: 'Undo: move window', enabled: true });
    expect(found('edit.redo')).toMatchObject({ label: 'Redo', enabled: false });
    expect(found('view.guides')).toMatchObject({ type: 'checkbox', checked: true });
  });

  it('C6: lists captures opened before; one that has moved away says so', () => {
    const { items, opened } = menu('linux', { recent: [capture, { ...capture, name: 'old.csv', there: false }] });
    const recent = items.find((item) => item.id === 'recent');
    expect(labels(itemsOf(recent ?? {}))).toEqual(['van & car.csv', 'old.csv (moved away)']);
    press(itemsOf(recent ?? {})[1]);
    expect(opened).toEqual(['old.csv']);
    expect(menu('linux').items.find((item) => item.id === 'recent')?.enabled).toBe(false);
  });
});
