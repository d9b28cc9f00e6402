import { beforeEach, describe, expect, it } from 'vitest';
import { renameVehicle } from '../../../../core/record/edits/vehicle.ts';
import { newVehicle } from '../../../../core/record/newVehicle.ts';
import type { VehicleRecord } from '../../../../core/record/schema.ts';
import { createSaver, SAVE_AFTER_MS, type Saver, TRY_AGAIN_MS } from '../../../../renderer/program/saver.ts';
import { createNoticeStore, type NoticeStore } from '../../../../renderer/state/noticeStore.ts';
import { createRecordStore, type RecordStore } from '../../../../renderer/state/recordStore.ts';
import { type FakeClock, fakeClock } from '../../../support/fakeClock.ts';
import { createStandIn } from '../../../support/standInShell.ts';
import { emptyMemory } from '../../../support/windowProgram.ts';

const FULL = { id: 'full', what: 'The disk is full.', where: 'Vehicles', doNext: 'Make room.' };

let saved: string[];
let refuse: boolean;
let gate: Promise<void>;
let clock: FakeClock;
let record: RecordStore;
let notices: NoticeStore;
let saver: Saver;

beforeEach(() => {
  saved = [];
  refuse = false;
  gate = Promise.resolve();
  clock = fakeClock();
  record = createRecordStore();
  notices = createNoticeStore();
  const shell = {
    ...createStandIn([], emptyMemory()).shell,
    saveVehicle: async ({ record: whole }: { record: VehicleRecord }) => {
      await gate;
      if (refuse) return { saved: false as const, problem: FULL };
      saved.push(whole.identity.name);
      return { saved: true as const, savedAt: '2026-01-01T00:00:00Z' };
    },
  };
  saver = createSaver({ shell, record, notices, clock });
  saver.start();
  const vehicle = newVehicle({ id: 'v', name: 'Van', createdAt: '2026-01-01T00:00:00Z' });
  saver.isOnDisk(vehicle);
  record.getState().open(vehicle, false);
});

const rename = (name: string): void => record.getState().edit(renameVehicle(name));
const microtasks = async (): Promise<void> => {
  for (let i = 0; i < 10; i++) await Promise.resolve();
};

describe('saving by itself', () => {
  it('leaves a record alone that was only opened', async () => {
    clock.pass(60_000);
    await microtasks();
    expect(saved).toEqual([]);
    expect(record.getState().save).toBe('saved');
  });

  it('saves a burst of edits once, with the last of them, within 300 ms', async () => {
    for (const name of ['A', 'B', 'C']) rename(name);
    expect(record.getState().save).toBe('pending');
    expect(SAVE_AFTER_MS).toBeLessThanOrEqual(300);
    clock.pass(SAVE_AFTER_MS);
    await microtasks();
    expect(saved).toEqual(['C']);
    expect(record.getState().save).toBe('saved');
  });

  it('saves an edit that was made while a save was under way', async () => {
    let open = (): void => undefined;
    gate = new Promise((resolve) => {
      open = resolve;
    });
    rename('A');
    clock.pass(SAVE_AFTER_MS);
    rename('B');
    open();
    await saver.flush();
    expect(saved).toEqual(['A', 'B']);
    expect(record.getState().save).toBe('saved');
  });

  it('waits for the end of a drag', async () => {
    record.getState().beginGesture('move window');
    rename('half way');
    clock.pass(5000);
    await microtasks();
    expect(saved).toEqual([]);
    record.getState().endGesture();
    clock.pass(SAVE_AFTER_MS);
    await microtasks();
    expect(saved).toEqual(['half way']);
  });

  it('saves an undo, and keeps the steps', async () => {
    rename('A');
    await saver.flush();
    record.getState().undo();
    await saver.flush();
    expect(saved).toEqual(['A', 'Van']);
    expect(record.getState().history?.undone).toHaveLength(1);
  });

  it('never saves a record of a newer program', async () => {
    const newer = newVehicle({ id: 'n', name: 'Newer', createdAt: '2026-01-01T00:00:00Z' });
    record.getState().open(newer, true);
    rename('changed');
    expect(await saver.flush()).toBe(true);
    expect(saved).toEqual([]);
  });
});

describe('a save that is refused', () => {
  it('says so, keeps the work, and tries again by itself', async () => {
    refuse = true;
    rename('A');
    clock.pass(SAVE_AFTER_MS);
    await microtasks();
    expect(record.getState().save).toBe('failed');
    expect(notices.getState().problems.map(({ problem }) => problem)).toEqual([FULL]);
    expect(record.getState().history?.record.identity.name).toBe('A');

    refuse = false;
    clock.pass(TRY_AGAIN_MS);
    await microtasks();
    expect(saved).toEqual(['A']);
    expect(record.getState().save).toBe('saved');
    expect(notices.getState().problems).toEqual([]);
  });

  it('is tried again with the next edit, long before its own next try', async () => {
    refuse = true;
    rename('A');
    clock.pass(SAVE_AFTER_MS);
    await microtasks();
    refuse = false;
    rename('B');
    clock.pass(SAVE_AFTER_MS);
    await microtasks();
    expect(saved).toEqual(['B']);
    clock.pass(TRY_AGAIN_MS);
    await microtasks();
    expect(saved).toEqual(['B']);
  });

  it('is told to whoever waits for it', async () => {
    refuse = true;
    rename('A');
    expect(await saver.flush()).toBe(false);
  });
});
