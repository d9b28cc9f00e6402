// Edits of the list of captures. The files themselves are never touched.

import type { CaptureRef, ColumnChoice, VehicleRecord } from '../schema.ts';
import type { Edit } from './edit.ts';
import { withChanged, withEntry, without } from './entries.ts';

/** Adds a capture to the vehicle. */
export function addCapture(capture: CaptureRef): Edit {
  return {
    name: 'add capture',
    apply: (record) => ({ ...record, captures: withEntry(record.captures, capture) }),
  };
}

/** Says what a capture shows: the vehicle before or after the repair, a known-good one, or something else. */
export function setCaptureKind(id: string, kind: CaptureRef['kind']): Edit {
  return {
    name: 'change kind of capture',
    apply: (record) => ({ ...record, captures: withChanged(record.captures, id, (one) => ({ ...one, kind })) }),
  };
}

/** What another choice of columns, or of repairs, makes of the same bytes. */
export interface Reread {
  readonly columnChoice: ColumnChoice | null;
  readonly durationS: number;
  readonly rows: number;
}

/** Chooses the columns of a capture anew. */
export function setColumnChoice(id: string, { columnChoice, durationS, rows }: Reread): Edit {
  return {
    name: 'choose columns',
    apply: (record) => ({
      ...record,
      captures: withChanged(record.captures, id, (one) => ({ ...one, columnChoice, durationS, rows })),
    }),
  };
}

/** Undoes repairs of a capture's times, or makes them again. */
export function setRepairs(id: string, reread: Reread): Edit {
  return { ...setColumnChoice(id, reread), name: 'choose repairs' };
}

/**
 * Takes a capture off the vehicle, and with it what was marked on it: its windows, their findings and its notes.
 * Temperature readings stay and no longer name it.
 */
export function removeCapture(id: string): Edit {
  return { name: 'remove capture', apply: (record) => withoutCapture(record, id) };
}

function withoutCapture(record: VehicleRecord, id: string): VehicleRecord {
  const gone = new Set(
    Object.values(record.windows)
      .filter((window) => window.captureId === id)
      .map((window) => window.id),
  );
  let readings = record.readings;
  for (const reading of Object.values(record.readings)) {
    if (reading.captureId !== id) continue;
    readings = withChanged(readings, reading.id, (one) => ({ ...one, captureId: null }));
  }
  return {
    ...record,
    captures: without(record.captures, (capture) => capture.id === id),
    windows: without(record.windows, (window) => gone.has(window.id)),
    notes: without(record.notes, (note) => note.captureId === id),
    findings: without(record.findings, (kept) => kept.windowId !== null && gone.has(kept.windowId)),
    readings,
  };
}
