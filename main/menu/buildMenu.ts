// The menu bar, made from core/bridge/commandList.ts: every command in exactly one menu, its key beside it. What the
// system does by itself (copy, paste, quit) is left to the system.

import type { MenuItemConstructorOptions } from 'electron';
import { COMMANDS, type CommandEntry } from '../../core/bridge/commandList.ts';
import type { RecentCapture } from '../../core/bridge/shellMessages.ts';

export type Platform = 'linux' | 'win32' | 'darwin';

/** What the window said of a command last. */
export interface CommandState {
  readonly enabled: boolean;
  readonly checked: boolean;
  readonly words: string | null;
}

export interface MenuParts {
  readonly platform: Platform;
  readonly programName: string;
  readonly states: ReadonlyMap<string, CommandState>;
  readonly recent: readonly RecentCapture[];
  run(commandId: string): void;
  openRecent(capture: RecentCapture): void;
}

type Item = MenuItemConstructorOptions;
type MenuName = CommandEntry['menu'];

const MENU_WORDS: Readonly<Record<MenuName, string>> = {
  file: '&File',
  edit: '&Edit',
  view: '&View',
  vehicle: 'V&ehicle',
  window: '&Window',
  help: '&Help',
};

/** Commands that the menu of the program itself holds on macOS. */
const IN_PROGRAM_MENU = ['help.about', 'file.settings'];

const RULE: Item = { type: 'separator' };

/** The whole menu bar as Electron's template. */
export function menuTemplate(parts: MenuParts): Item[] {
  const menus = (Object.keys(MENU_WORDS) as MenuName[]).map((menu) => ({
    label: parts.platform === 'darwin' ? MENU_WORDS[menu].replace('&', '') : MENU_WORDS[menu],
    ...(menu === 'help' ? { role: 'help' as const } : {}),
    submenu: menuItems(menu, parts),
  }));
  return parts.platform === 'darwin' ? [programMenu(parts), ...menus] : menus;
}

function menuItems(menu: MenuName, parts: MenuParts): Item[] {
  const moved = parts.platform === 'darwin' ? IN_PROGRAM_MENU : [];
  const items = COMMANDS.filter((command) => command.menu === menu && !moved.includes(command.id)).flatMap(
    (command) => [
      ...(command.ruleAbove === true ? [RULE] : []),
      commandItem(command, parts),
      ...(command.id === 'file.openSample' ? [recentMenu(parts)] : []),
      ...(command.id === 'edit.redo' ? [RULE, ...TEXT_ITEMS] : []),
    ],
  );
  if (menu === 'file' && parts.platform !== 'darwin') items.push(RULE, { role: 'quit', label: 'Quit' });
  return withoutLooseRules(items);
}

/** Editing of text is the system's own affair. */
const TEXT_ITEMS: readonly Item[] = [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }];

function commandItem(command: CommandEntry, { platform, states, run }: MenuParts): Item {
  const state = states.get(command.id);
  return {
    id: command.id,
    label: escaped(state?.words ?? command.words),
    enabled: state?.enabled ?? true,
    ...(command.tick === true ? { type: 'checkbox' as const, checked: state?.checked ?? false } : {}),
    ...accelerator(command, platform),
    click: () => run(command.id),
  };
}

/**
 * The page answers keys itself, so that they reach a field that is being typed in first: here they are only shown. macOS
 * always acts on them, so there a key without a modifier, which would take letters from a field, is not shown.
 */
function accelerator({ key }: CommandEntry, platform: Platform): Item {
  if (key === null) return {};
  if (platform !== 'darwin') return { accelerator: key, registerAccelerator: false };
  return key.includes('+') || /^F\d+$/.test(key) ? { accelerator: key } : {};
}

function recentMenu({ recent, openRecent }: MenuParts): Item {
  return {
    id: 'recent',
    label: 'Recent captures',
    enabled: recent.length > 0,
    submenu: recent.map((capture) => ({
      label: escaped(capture.there ? capture.name : `${capture.name} (moved away)`),
      click: () => openRecent(capture),
    })),
  };
}

function programMenu(parts: MenuParts): Item {
  const own = COMMANDS.filter(({ id }) => IN_PROGRAM_MENU.includes(id)).sort(
    (a, b) => IN_PROGRAM_MENU.indexOf(a.id) - IN_PROGRAM_MENU.indexOf(b.id),
  );
  const items = own.flatMap((command) => [commandItem(command, parts), RULE]);
  const system: Item[] = [{ role: 'services' }, RULE, { role: 'hide' }, { role: 'hideOthers' }, { role: 'unhide' }];
  return { label: parts.programName, submenu: [...items, ...system, RULE, { role: 'quit' }] };
}

/** An ampersand in a label marks the letter to press; one that belongs to a name is doubled. */
function escaped(words: string): string {
  return words.replaceAll('&', '&&');
}

/** No rule at either end, and never two in a row. */
function withoutLooseRules(items: readonly Item[]): Item[] {
  const isRule = (item: Item | undefined): boolean => item?.type === 'separator';
  return items.filter((item, i) => !isRule(item) || (i > 0 && i < items.length - 1 && !isRule(items[i - 1])));
}
