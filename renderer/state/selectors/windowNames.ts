import { WINDOW_KIND_WORDS } from '../../../core/evidence/words/terms.ts';
import type { RecordWindow, VehicleRecord } from '../../../core/record/schema.ts';
import type { WindowKind } from '../../../core/windows/window.ts';

/** What a window is called: its name, or its kind where the name was emptied. */
export function windowName(window: Pick<RecordWindow, 'name' | 'kind'>): string {
  return window.name.trim() === '' ? WINDOW_KIND_WORDS[window.kind] : window.name;
}

/** "Hold 2": the first number of this kind that no window of the vehicle has. */
export function freeWindowName(record: VehicleRecord, kind: WindowKind, taken: readonly string[] = []): string {
  const names = new Set([...Object.values(record.windows).map((window) => window.name), ...taken]);
  for (let number = 1; ; number++) {
    const name = `${WINDOW_KIND_WORDS[kind]} ${number}`;
    if (!names.has(name)) return name;
  }
}
