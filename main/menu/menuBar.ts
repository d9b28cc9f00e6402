import { Menu } from 'electron';
import type { RecentCapture } from '../../core/bridge/shellMessages.ts';
import { type CommandState, type MenuParts, menuTemplate } from './buildMenu.ts';

/** The menu bar that is shown, kept in step with what the window says of its commands. */
export class MenuBar {
  readonly #parts: Omit<MenuParts, 'states' | 'recent'>;
  #states = new Map<string, CommandState>();
  #recent: readonly RecentCapture[] = [];

  constructor(parts: Omit<MenuParts, 'states' | 'recent'>) {
    this.#parts = parts;
  }

  /** Makes the whole bar anew. */
  show(): void {
    const template = menuTemplate({ ...this.#parts, states: this.#states, recent: this.#recent });
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  }

  showRecent(recent: readonly RecentCapture[]): void {
    this.#recent = recent;
    this.show();
  }

  /** Words need a new bar; ticks and greyed entries change in the bar that is there. */
  showStates(states: readonly ({ readonly id: string } & CommandState)[]): void {
    const before = this.#states;
    this.#states = new Map([...before, ...states.map(({ id, ...state }) => [id, state] as const)]);
    if (states.some(({ id, words }) => words !== (before.get(id)?.words ?? null))) {
      this.show();
      return;
    }
    const bar = Menu.getApplicationMenu();
    for (const { id, enabled, checked } of states) {
      const item = bar?.getMenuItemById(id);
      if (item == null) continue;
      item.enabled = enabled;
      if (item.type === 'checkbox') item.checked = checked;
    }
  }
}
