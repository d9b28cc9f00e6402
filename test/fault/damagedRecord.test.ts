// T-SAVE-7: damage to the newest save is noticed, and the youngest good one offered.

import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { VehicleStore } from '../../main/store/vehicleStore.ts';
import { CrashableDisk, diskAfterCrash } from './support/crashableDisk.ts';
import { numberOf, vanFourteen } from './support/vanFourteen.ts';

const PLACES = 200;
const NOON = Date.parse('2026-03-02T12:00:00Z');

function storeOn(files: ConstructorParameters<typeof VehicleStore>[0]['files']) {
  let ms = NOON;
  return new VehicleStore({ folder: '/vehicles', files, nowMs: () => (ms += 60_000) });
}

let whole: ReadonlyMap<string, Uint8Array>;
let recordPath = '';
beforeAll(async () => {
  const disk = new CrashableDisk();
  const store = storeOn(disk.files);
  for (const number of [1, 2, 3]) await store.save(vanFourteen(number, 8000));
  whole = disk.now();
  recordPath = [...whole.keys()].find((path) => path.endsWith('record.json')) ?? '';
});

/** The three ways in which disks and people damage files. */
const DAMAGES: Readonly<Record<string, (bytes: Buffer, at: number) => Buffer>> = {
  cut: (bytes, at) => bytes.subarray(0, at),
  zero: (bytes, at) => Buffer.concat([bytes.subarray(0, at), Buffer.alloc(bytes.length - at)]),
  flip: (bytes, at) => {
    const flipped = Buffer.from(bytes);
    flipped[at] = (flipped[at] ?? 0) ^ 1;
    return flipped;
  },
};

describe('T-SAVE-7: a damaged newest save', () => {
  it.each(Object.keys(DAMAGES))(
    '%s at 200 places: never used, the youngest good one offered by its date',
    async (way) => {
      const bytes = Buffer.from(whole.get(recordPath) ?? []);
      for (let place = 0; place < PLACES; place++) {
        const at = Math.floor((place * bytes.length) / PLACES);
        const damaged = DAMAGES[way]?.(bytes, at) ?? bytes;
        const loaded = await storeOn(diskAfterCrash(new Map([...whole, [recordPath, damaged]]))).load('van-14');
        expect(loaded).toMatchObject({ ok: false, problem: { id: 'damagedRecord' } });
        if (!loaded.ok) expect(loaded.earlier[0]).toMatchObject({ savedAt: '2026-03-02T12:03:00.000Z', kind: 'saved' });
      }
    },
  );

  it('restoring the offer brings the vehicle back, and keeps the damaged bytes', async () => {
    const damaged = Buffer.from(whole.get(recordPath) ?? []).subarray(0, 5000);
    const disk = new CrashableDisk();
    const files = { ...diskAfterCrash(new Map([...whole, [recordPath, damaged]])) };
    disk.log.length = 0;
    const store = storeOn(files);
    const loaded = await store.load('van-14');
    const offer = loaded.ok ? undefined : loaded.earlier[0];
    const restored = await store.restore('van-14', offer?.generation ?? '');
    expect(restored.ok && numberOf(restored.record)).toBe(2);
    const aside = (await files.list(recordPath.replace('record.json', 'setAside'))).map((name) =>
      files.readWhole(recordPath.replace('record.json', `setAside/${name}`)),
    );
    expect((await Promise.all(aside)).map((bytes) => Buffer.from(bytes).equals(damaged))).toEqual([true]);
  });

  it('never makes a path of a string that is no name of ours', async () => {
    const asked: string[] = [];
    const under = diskAfterCrash(whole);
    const files = {
      ...under,
      readWhole: (path: string) => {
        asked.push(path);
        return under.readWhole(path);
      },
    };
    const store = storeOn(files);
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.string(), fc.constantFrom('../record.json', 'aside-../../x', '/etc/passwd')),
        async (name) => {
          const restored = await store.restore('van-14', name);
          expect(restored).toMatchObject({ ok: false, problem: { id: 'missingSave' } });
        },
      ),
      { numRuns: 500 },
    );
    const known = [...whole.keys()].filter((path) => path.includes('/generations/'));
    expect(asked.filter((path) => !known.includes(path))).toEqual([]);
  });
});
