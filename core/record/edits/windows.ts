// Edits of the windows. A window that came from an offer of the core and is changed by hand says so from then on.

import type { Bank } from '../../capture/roles.ts';
import type { Stretch, WindowKind } from '../../windows/window.ts';
import type { RecordWindow } from '../schema.ts';
import type { Edit } from './edit.ts';
import { withChanged, withEntry, without } from './entries.ts';

/** Adds a window. A stretch that does not run forwards is a mistake of the caller and throws. */
export function addWindow(window: RecordWindow): Edit {
  mustRunForwards(window);
  return {
    name: window.origin === 'accepted' ? 'accept window' : 'mark window',
    apply: (record) => ({ ...record, windows: withEntry(record.windows, window) }),
  };
}

/** Adds several windows at once, as one step. */
export function addWindows(windows: readonly RecordWindow[]): Edit {
  windows.forEach(mustRunForwards);
  return {
    name: windows.length === 1 ? 'accept window' : 'accept windows',
    apply: (record) => ({ ...record, windows: windows.reduce(withEntry, record.windows) }),
  };
}

/** Moves a window or stretches it by an edge, s from the capture's start. A stretch that runs backwards throws. */
export function moveWindow(id: string, { startS, endS }: Stretch): Edit {
  mustRunForwards({ startS, endS });
  return changeWindow('move window', id, (window) =>
    window.startS === startS && window.endS === endS
      ? window
      : { ...window, startS, endS, origin: window.origin === 'byHand' ? 'byHand' : 'changed' },
  );
}

/** Names a window. An empty name is allowed: the window is then called by its kind and number. */
export function renameWindow(id: string, name: string): Edit {
  return changeWindow('rename window', id, (window) => ({ ...window, name }));
}

/** Says which bank a window is about; null for the whole engine. */
export function setWindowBank(id: string, bank: Bank): Edit {
  return changeWindow('change bank of window', id, (window) => ({ ...window, bank }));
}

/** Says what the engine does in a window. */
export function setWindowKind(id: string, kind: WindowKind): Edit {
  return changeWindow('change kind of window', id, (window) => ({ ...window, kind }));
}

/** Removes a window and the findings kept about it. */
export function removeWindow(id: string): Edit {
  return {
    name: 'delete window',
    apply: (record) => ({
      ...record,
      windows: without(record.windows, (window) => window.id === id),
      findings: without(record.findings, (kept) => kept.windowId === id),
    }),
  };
}

function changeWindow(name: string, id: string, change: (window: RecordWindow) => RecordWindow): Edit {
  return { name, apply: (record) => ({ ...record, windows: withChanged(record.windows, id, change) }) };
}

function mustRunForwards({ startS, endS }: Stretch): void {
  if (!(Number.isFinite(startS) && Number.isFinite(endS) && startS < endS)) {
    throw new RangeError(`a window ends after it starts, not ${startS} to ${endS} s`);
  }
}
