// Keys in a focused pane that move the cursor or the view. Every other key is left alone: keys that are commands are
// heard by the program's key map, which also knows whether the person wants single letters to act.

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
  /** Drops what is under way: a half-drawn window, a second cursor. */
  | { readonly kind: 'drop' };

const ZOOM_STEP = 1.5;
const FAST_STEPS = 10;

/** What a key does in a pane, or null where it means nothing there. */
export function paneKeyDeed(key: PaneKey): PaneKeyDeed | null {
  const jump = key.ctrlKey || key.metaKey;
  if (key.altKey) return null;
  if (key.key === 'ArrowLeft' || key.key === 'ArrowRight') {
    const direction = key.key === 'ArrowRight' ? 1 : -1;
    if (jump) return { kind: 'stop', direction };
    return { kind: 'step', direction, count: key.shiftKey ? FAST_STEPS : 1 };
  }
  return jump ? null : plainKeyDeed(key.key);
}

function plainKeyDeed(key: string): PaneKeyDeed | null {
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
