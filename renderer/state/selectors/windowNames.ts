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

/** Windows in the order in which people go through them: capture by capture, each by its start. */
export function windowsInOrder(record: VehicleRecord): readonly RecordWindow[] {
  const order = new Map(capturesInOrder(record).map((capture, index) => [capture.id, index]));
  const place = (window: RecordWindow): number => order.get(window.captureId) ?? 0;
  return Object.values(record.windows).sort(
    (a, b) => place(a) - place(b) || a.startS - b.startS || (a.bank ?? 0) - (b.bank ?? 0) || a.id.localeCompare(b.id),
  );
}

export function capturesInOrder(record: VehicleRecord) {
  return Object.values(record.captures).sort((a, b) => a.addedAt.localeCompare(b.addedAt) || a.id.localeCompare(b.id));
}
