// T-LOCK-3: a record that another machine or a synchronising folder changed is never overwritten.

import { describe, expect, it } from 'vitest';
import type { FileLayer } from '../../main/store/fileLayer.ts';
import { VehicleStore } from '../../main/store/vehicleStore.ts';
import { CrashableDisk } from './support/crashableDisk.ts';
import { numberOf, vanFourteen } from './support/vanFourteen.ts';

const SMALL = 4000;
let ms = Date.parse('2026-03-02T08:00:00Z');
const nowMs = () => (ms += 1000);
const storeOn = (files: FileLayer) => new VehicleStore({ folder: '/vehicles', files, nowMs });

describe('T-LOCK-3: two programs on one record', () => {
  it('in 50 interleavings no edit is lost: what is not the newest is among the earlier saves', async () => {
    for (let pattern = 0; pattern < 50; pattern++) {
      const disk = new CrashableDisk();
      const stores = [storeOn(disk.files), storeOn(disk.files)] as const;
      await stores[0].save(vanFourteen(0, SMALL));
      for (const store of stores) await store.load('van-14');
      const written = [0];
      for (let step = 1; step <= 6; step++) {
        const store = stores[(pattern >> (step - 1)) & 1 ? 1 : 0];
        written.push(step);
        const saved = await store.save(vanFourteen(step, SMALL));
        // A store that is told of a change from outside loads it, as the window does, before it goes on.
        if (!saved.saved) {
          expect(saved.problem.id).toBe('changedOutside');
          await store.load('van-14');
        }
      }
      expect(await everyNumber(disk.files)).toEqual(written);
    }
  });

  it('is noticed even when the change comes while the bytes are being written', async () => {
    const disk = new CrashableDisk();
    const other = storeOn(disk.files);
    await other.save(vanFourteen(1, SMALL));
    let intruding = false;
    const files: FileLayer = {
      ...disk.files,
      create: async (path, mode) => {
        if (path.includes('generations') || intruding) return disk.files.create(path, mode);
        intruding = true;
        await other.save(vanFourteen(2, SMALL));
        return disk.files.create(path, mode);
      },
    };
    const store = storeOn(files);
    await store.load('van-14');
    expect(await store.save(vanFourteen(3, SMALL))).toMatchObject({ saved: false, problem: { id: 'changedOutside' } });
    const newest = await store.load('van-14');
    expect(newest.ok && numberOf(newest.record)).toBe(2);
  });

  it('a record that was never loaded here is not replaced by a new vehicle of the same id', async () => {
    const disk = new CrashableDisk();
    await storeOn(disk.files).save(vanFourteen(1, SMALL));
    expect(await storeOn(disk.files).save(vanFourteen(2, SMALL))).toMatchObject({ saved: false });
  });
});

/** Numbers of the newest record and of all earlier ones, ascending. */
async function everyNumber(files: FileLayer): Promise<number[]> {
  const store = storeOn(files);
  const newest = await store.load('van-14');
  const numbers = [newest.ok ? numberOf(newest.record) : -1];
  for (const { generation } of await store.earlier('van-14')) {
    const restored = await store.restore('van-14', generation);
    numbers.push(restored.ok ? numberOf(restored.record) : -1);
  }
  return numbers.sort((a, b) => a - b);
}
