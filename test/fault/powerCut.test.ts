// T-SAVE-2 and T-SAVE-3: what a power cut leaves, at every operation of a save.

import { describe, expect, it } from 'vitest';
import type { FileLayer } from '../../main/store/fileLayer.ts';
import { VehicleStore } from '../../main/store/vehicleStore.ts';
import { CrashableDisk, diskAfterCrash } from './support/crashableDisk.ts';
import { numberOf, vanFourteen } from './support/vanFourteen.ts';

const FOLDER = '/vehicles';

function storeOn(files: FileLayer): VehicleStore {
  let ms = Date.parse('2026-03-02T08:00:00Z');
  return new VehicleStore({ folder: FOLDER, files, nowMs: () => (ms += 1000) });
}

/** Saves 1, 2, 3 and 4 on a disk, and says after how many operations each was acknowledged. */
async function fourSaves(disk: CrashableDisk, files: FileLayer = disk.files, bytes = 400_000): Promise<number[]> {
  const store = storeOn(files);
  const acknowledged: number[] = [];
  for (const number of [1, 2, 3, 4]) {
    expect(await store.save(vanFourteen(number, bytes))).toMatchObject({ saved: true });
    acknowledged.push(disk.log.length);
  }
  return acknowledged;
}

/** Every crash state in which the vehicle is neither as it was before nor as it was to be. */
async function broken(
  disk: CrashableDisk,
  acknowledged: readonly number[],
): Promise<{ states: number; bad: string[] }> {
  const bad: string[] = [];
  let states = 0;
  for (let done = acknowledged[0] ?? 0; done <= disk.log.length; done++) {
    const safe = acknowledged.filter((at) => at <= done).length;
    for (const state of disk.crashStates(done)) {
      states++;
      const loaded = await storeOn(diskAfterCrash(state)).load('van-14');
      const number = loaded.ok ? numberOf(loaded.record) : loaded.problem.id;
      if (number !== safe && number !== safe + 1) bad.push(`after ${done} operations: ${number} instead of ${safe}`);
    }
  }
  return { states, bad };
}

/** The same disk, with one of the store's precautions taken away. */
function without(disk: CrashableDisk, precaution: 'file' | 'folder'): FileLayer {
  if (precaution === 'folder') return { ...disk.files, syncFolder: async () => {} };
  const create: FileLayer['create'] = async (path, mode) => ({
    ...(await disk.files.create(path, mode)),
    sync: async () => {},
  });
  return { ...disk.files, create };
}

describe('T-SAVE-2: after a power cut the record is the old one or the new one', () => {
  it('in every state that the four saves may leave', async () => {
    const disk = new CrashableDisk();
    const { states, bad } = await broken(disk, await fourSaves(disk));
    expect(bad).toEqual([]);
    expect(states).toBeGreaterThan(500);
  });

  it.each(['file', 'folder'] as const)(
    'and this suite notices a store that does not sync the %s',
    async (precaution) => {
      const disk = new CrashableDisk();
      const { bad } = await broken(disk, await fourSaves(disk, without(disk, precaution), 20_000));
      expect(bad.length).toBeGreaterThan(0);
    },
  );
});

describe('T-SAVE-3: the order of a save', () => {
  it('is a temporary file, its bytes, its sync, the rename, the sync of the folder', async () => {
    const disk = new CrashableDisk();
    await fourSaves(disk);
    const last = disk.log.findLastIndex((operation) => operation.what === 'create');
    expect(disk.order.slice(last)).toEqual(['create', 'write', 'sync', 'rename', 'syncFolder']);
    const rename = disk.log.slice(last).find((operation) => operation.what === 'rename');
    expect(rename).toMatchObject({ path: expect.stringMatching(/record\.json$/) });
  });
});
