import type { ShellBridge } from '../../core/bridge/shellMessages.ts';
import type { Problem } from '../../core/reading/problem.ts';
import type { VehicleRecord } from '../../core/record/schema.ts';
import type { NoticeStore } from '../state/noticeStore.ts';
import { type RecordStore, wholeRecordOf } from '../state/recordStore.ts';
import type { Clock } from './clock.ts';

/** Edits closer together than this are saved at once. */
export const SAVE_AFTER_MS = 250;
/** A save that failed is tried again by itself. */
export const TRY_AGAIN_MS = 10_000;

/** Saves the open record by itself after every edit; nobody has to think of it. */
export interface Saver {
  /** Begins to watch the record. The returned function stops it. */
  start(): () => void;
  /** Says that this record is on disk already: it was just loaded. */
  isOnDisk(record: VehicleRecord): void;
  /** Saves now what is not saved. True when everything is on disk; false where the save was refused. */
  flush(): Promise<boolean>;
}

interface Parts {
  readonly shell: ShellBridge;
  readonly record: RecordStore;
  readonly notices: NoticeStore;
  readonly clock: Clock;
}

export function createSaver({ shell, record, notices, clock }: Parts): Saver {
  let onDisk: VehicleRecord | null = null;
  let running: Promise<boolean> | null = null;
  let planned: { readonly atMs: number; callOff(): void } | null = null;

  /** What has to go to disk now, or null. A drag under way waits for its end. */
  const unsaved = (): VehicleRecord | null => {
    const { history, readOnly } = record.getState();
    if (history === null || readOnly || history.gesture !== null || history.record === onDisk) return null;
    return history.record;
  };

  /** The sooner of two plans holds: an edit does not wait for the next try of a save that failed. */
  const later = (milliseconds: number): void => {
    const atMs = clock.now() + milliseconds;
    if (planned !== null && planned.atMs <= atMs) return;
    planned?.callOff();
    const callOff = clock.after(milliseconds, () => {
      planned = null;
      void flush();
    });
    planned = { atMs, callOff };
  };

  const saveOnce = async (whole: VehicleRecord): Promise<boolean> => {
    const reply = await shell
      .saveVehicle({ record: whole })
      .catch(() => ({ saved: false as const, problem: NO_ANSWER }));
    if (reply.saved) {
      onDisk = whole;
      notices.getState().clear('save');
    } else {
      notices.getState().tell('save', reply.problem);
    }
    return reply.saved;
  };

  /** Until nothing is left unsaved or a save is refused. */
  const saveAll = async (): Promise<boolean> => {
    for (let whole = unsaved(); whole !== null; whole = unsaved()) {
      if (await saveOnce(whole)) continue;
      record.getState().saved('failed');
      later(TRY_AGAIN_MS);
      return false;
    }
    if (wholeRecordOf(record.getState()) === onDisk) record.getState().saved('saved');
    return true;
  };

  const flush = (): Promise<boolean> => {
    planned?.callOff();
    planned = null;
    running ??= saveAll().finally(() => {
      running = null;
    });
    return running;
  };

  return {
    start: () =>
      record.subscribe((now, before) => {
        if (now.history?.record === before.history?.record && now.history?.gesture === before.history?.gesture) return;
        if (unsaved() === null) return;
        if (now.save === 'saved') record.getState().saved('pending');
        later(SAVE_AFTER_MS);
      }),
    isOnDisk: (whole) => {
      onDisk = whole;
    },
    flush,
  };
}

const NO_ANSWER: Problem = {
  id: 'noAnswer',
  what: 'The record could not be saved.',
  where: 'The folder of vehicles',
  doNext: 'Your work is kept in this window. It is tried again by itself; "Save now" tries at once.',
};
