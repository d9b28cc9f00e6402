// From a key to a command. The menu bar shows the same keys; here they act, so that they also act where no menu bar is.

import { COMMANDS, type CommandEntry } from '../../core/bridge/commandList.ts';

/** The part of a KeyboardEvent that decides. */
export interface PressedKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

export interface KeyPlace {
  /** Whether the focus is in a pane of traces. */
  readonly inPane: boolean;
  /** Whether the focus is where text is typed. */
  readonly inText: boolean;
  readonly singleKeys: boolean;
  readonly mac: boolean;
}

/** The command a key means at this place, or null. */
export function commandOfKey(pressed: PressedKey, place: KeyPlace): string | null {
  for (const entry of COMMANDS) {
    for (const accelerator of [entry.key, entry.otherKey ?? null]) {
      if (accelerator !== null && matches(accelerator, pressed, place.mac) && acts(entry, accelerator, place)) {
        return entry.id;
      }
    }
  }
  return null;
}

/** "Ctrl+Shift+E" or "⇧⌘E": a key as people read it on their platform. */
export function keyWords(accelerator: string, mac: boolean): string {
  const parts = partsOf(accelerator);
  const name = KEY_NAMES[parts.key] ?? parts.key;
  if (mac) return `${parts.alt ? '⌥' : ''}${parts.shift ? '⇧' : ''}${parts.command ? '⌘' : ''}${name}`;
  return [parts.command && 'Ctrl', parts.alt && 'Alt', parts.shift && 'Shift', name].filter(Boolean).join('+');
}

/** All keys of a command as people read them. */
export function keysOf({ key, otherKey }: CommandEntry, mac: boolean): readonly string[] {
  return [key, otherKey ?? null].flatMap((accelerator) => (accelerator === null ? [] : [keyWords(accelerator, mac)]));
}

/** A key without Ctrl, Cmd or Alt that is no function key: it could be typed or belong to the focused control. */
export function isBare(accelerator: string): boolean {
  const { command, alt, key } = partsOf(accelerator);
  return !command && !alt && !/^F\d+$/.test(key);
}

function acts(entry: CommandEntry, accelerator: string, place: KeyPlace): boolean {
  if (!isBare(accelerator)) return !(place.inText && TEXT_KEYS.has(accelerator));
  if (place.inText) return false;
  if (entry.inPane === true && !place.inPane) return false;
  return accelerator.length > 1 || place.singleKeys;
}

/** Keys that belong to the text while it is edited. */
const TEXT_KEYS = new Set(['CmdOrCtrl+Z', 'CmdOrCtrl+Shift+Z', 'CmdOrCtrl+Y', 'Alt+Left', 'Alt+Right']);

const EVENT_KEYS: Readonly<Record<string, string>> = { Plus: '+', Left: 'ArrowLeft', Right: 'ArrowRight' };
const KEY_NAMES: Readonly<Record<string, string>> = { Plus: '+', '-': '−', Left: '←', Right: '→' };

function partsOf(accelerator: string) {
  const names = accelerator === '+' ? ['+'] : accelerator.split('+');
  return {
    command: names.includes('CmdOrCtrl'),
    alt: names.includes('Alt'),
    shift: names.includes('Shift'),
    key: names.at(-1) ?? '',
  };
}

function matches(accelerator: string, pressed: PressedKey, mac: boolean): boolean {
  const wanted = partsOf(accelerator);
  const key = EVENT_KEYS[wanted.key] ?? wanted.key;
  // Signs lie on other keys elsewhere, some of them under Shift; for letters and named keys Shift counts.
  const sign = key.length === 1 && !/[a-z]/i.test(key);
  if (!(sign && isBare(accelerator) && byThirdLevel(pressed, mac))) {
    const [command, other] = mac ? [pressed.metaKey, pressed.ctrlKey] : [pressed.ctrlKey, pressed.metaKey];
    if (command !== wanted.command || other || pressed.altKey !== wanted.alt) return false;
    if (!sign && pressed.shiftKey !== wanted.shift) return false;
  }
  if (key === '+' && pressed.key === '=') return true;
  return pressed.key.toLowerCase() === key.toLowerCase();
}

/** Whether a sign was typed as "[" is on many keyboards: by AltGr, which Windows tells as Ctrl and Alt, or by Option. */
function byThirdLevel({ ctrlKey, metaKey, altKey }: PressedKey, mac: boolean): boolean {
  return altKey && !metaKey && ctrlKey !== mac;
}
