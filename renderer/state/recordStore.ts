import { createStore, type StoreApi } from 'zustand/vanilla';
import { isReadBlind, shownOf } from '../../core/record/blindReading.ts';
import type { Edit } from '../../core/record/edits/edit.ts';
import {
  abandonGesture,
  absorb,
  beginGesture,
  endGesture,
  type History,
  look,
  perform,
  redo,
  redoWords,
  seal,
  sign,
  startHistory,
  undo,
  undoWords,
} from '../../core/record/history.ts';
import type { Signed } from '../../core/record/opinionSchema.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';

/** 'failed' keeps the work in the window: the next edit, "Save now" or a while later tries again. */
export type SaveState = 'saved' | 'pending' | 'failed';

/** The open vehicle's record with its undo and redo. Null where no vehicle is open. */
export interface RecordState {
  readonly history: History | null;
  /** True for a record of a newer program: shown, never edited, never saved. */
  readonly readOnly: boolean;
  readonly save: SaveState;
  /** The open vehicle is being put away: what is opened from now on is not for it. */
  readonly leaving: boolean;
  open(record: VehicleRecord, readOnly: boolean): void;
  closeVehicle(): void;
  /** Makes an edit; edits with the same `merge` key join one step until `seal`. */
  edit(edit: Edit, merge?: string): void;
  seal(): void;
  /** A drag: everything edited until `endGesture` is one step; `abandonGesture` leaves none. */
  beginGesture(name: string): void;
  endGesture(): void;
  abandonGesture(): void;
  /** Takes over what no person did, outside the steps. */
  absorb(edit: Edit): void;
  /** Adds what a reader signed; undo goes no further back. */
  sign(entry: Signed): void;
  /** Ends a blind reading at this instant. */
  look(instant: string): void;
  undo(): void;
  redo(): void;
  saved(save: SaveState): void;
}

export type RecordStore = StoreApi<RecordState>;

export function createRecordStore(): RecordStore {
  return createStore<RecordState>()((set, get) => {
    const change = (next: (history: History) => History): void => {
      const { history, readOnly } = get();
      if (history === null || readOnly) return;
      const after = next(history);
      if (after !== history) set({ history: after });
    };
    return {
      history: null,
      readOnly: false,
      save: 'saved',
      leaving: false,
      open: (record, readOnly) => set({ history: startHistory(record), readOnly, save: 'saved' }),
      closeVehicle: () => set({ history: null, readOnly: false, save: 'saved' }),
      edit: (edit, merge) => change((history) => perform(history, edit, merge ?? null)),
      seal: () => change(seal),
      beginGesture: (name) => change((history) => beginGesture(history, name)),
      endGesture: () => change(endGesture),
      abandonGesture: () => change(abandonGesture),
      absorb: (edit) => change((history) => absorb(history, edit)),
      sign: (entry) => change((history) => sign(history, entry)),
      look: (instant) => change((history) => look(history, instant)),
      undo: () => change(undo),
      redo: () => change(redo),
      saved: (save) => set({ save }),
    };
  });
}

/**
 * The record as it may be shown, or null where no vehicle is open: without what a blind reading hides. Whatever is shown,
 * copied or handed over is made from this one; the same object as long as the record is the same.
 */
export function recordOf(state: RecordState): VehicleRecord | null {
  const whole = wholeRecordOf(state);
  if (whole === null) return null;
  const shown = SHOWN.get(whole) ?? shownOf(whole);
  SHOWN.set(whole, shown);
  return shown;
}

const SHOWN = new WeakMap<VehicleRecord, VehicleRecord>();

/** All of the record, to be saved, scored and signed; never to be shown. */
export const wholeRecordOf = (state: RecordState): VehicleRecord | null => state.history?.record ?? null;

/** Whether the open vehicle is read blind. */
export function readsBlind(state: RecordState): boolean {
  const whole = wholeRecordOf(state);
  return whole !== null && isReadBlind(whole);
}

/** The vehicle that a file opened now would join, or null where there is none or it is being put away. */
export const openVehicleId = (state: RecordState): string | null =>
  state.leaving ? null : (recordOf(state)?.id ?? null);

/** "Undo: move window", or null where there is nothing to undo. */
export const undoWordsOf = (state: RecordState): string | null => state.history && undoWords(state.history);

export const redoWordsOf = (state: RecordState): string | null => state.history && redoWords(state.history);
