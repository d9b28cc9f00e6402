// Keys in a focused pane. What moves the cursor or the view is done here; every other key is a command of the program,
// found in the one list of commands, so that pane, menu and help cannot differ.

import { COMMANDS } from '../../core/bridge/commandList.ts';

export interface PaneKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

export type PaneKeyDeed =
  /** By `count` samples, or pixels where these are wider. */
  | { readonly kind: 'step'; readonly direction: 1 | -1; readonly count: number }
  /** To the next switch, edge of a window or note. */
  | { readonly kind: 'stop'; readonly direction: 1 | -1 }
  | { readonly kind: 'zoom'; readonly factor: number }
  | { readonly kind: 'pan'; readonly screens: number }
  | { readonly kind: 'end'; readonly direction: 1 | -1 }
  | { readonly kind: 'command'; readonly id: string }
  /** Drops what is under way: a half-drawn window, a second cursor. */
  | { readonly kind: 'drop' };

const ZOOM_STEP = 1.5;
const FAST_STEPS = 10;

/** The keys that the panes have for themselves, in words, for the help page. */
export const PANE_KEYS: readonly { readonly keys: string; readonly words: string }[] = [
  { keys: 'Left, Right', words: 'Cursor by one sample or pixel' },
  { keys: 'Shift+Left, Shift+Right', words: 'Cursor by ten' },
  { keys: 'Ctrl+Left, Ctrl+Right', words: 'Cursor to the switch, window or note before or after' },
  { keys: '+, −', words: 'Zoom in or out at the cursor' },
  { keys: 'Home, End', words: 'Start or end of the capture' },
  { keys: 'Page up, Page down', words: 'One screen earlier or later' },
  { keys: 'Escape', words: 'Drop a half-drawn window, then the second cursor' },
];

/** What a key does in a pane, or null where it means nothing there. */
export function paneKeyDeed(key: PaneKey): PaneKeyDeed | null {
  const jump = key.ctrlKey || key.metaKey;
  if (!key.altKey) {
    if (key.key === 'ArrowLeft' || key.key === 'ArrowRight') {
      const direction = key.key === 'ArrowRight' ? 1 : -1;
      if (jump) return { kind: 'stop', direction };
      return { kind: 'step', direction, count: key.shiftKey ? FAST_STEPS : 1 };
    }
    if (!jump) {
      const own = ownKey(key.key);
      if (own !== null) return own;
    }
  }
  return jump || key.altKey ? null : commandOf(key.key);
}

function ownKey(key: string): PaneKeyDeed | null {
  switch (key) {
    case '+':
    case '=':
      return { kind: 'zoom', factor: 1 / ZOOM_STEP };
    case '-':
    case '−':
      return { kind: 'zoom', factor: ZOOM_STEP };
    case 'PageUp':
      return { kind: 'pan', screens: -1 };
    case 'PageDown':
      return { kind: 'pan', screens: 1 };
    case 'Home':
      return { kind: 'end', direction: -1 };
    case 'End':
      return { kind: 'end', direction: 1 };
    case 'Escape':
      return { kind: 'drop' };
    default:
      return null;
  }
}

function commandOf(key: string): PaneKeyDeed | null {
  const wanted = key.toLowerCase();
  const found = COMMANDS.find(
    (command) =>
      command.inPane === true && (command.key?.toLowerCase() === wanted || command.otherKey?.toLowerCase() === wanted),
  );
  return found === undefined ? null : { kind: 'command', id: found.id };
}
