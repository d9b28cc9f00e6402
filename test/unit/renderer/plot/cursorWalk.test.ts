import { describe, expect, it } from 'vitest';
import { CursorWalk, nextStopTime } from '../../../../renderer/plot/cursorWalk.ts';
import { countSwitches } from '../../../../renderer/plot/switchCount.ts';
import type { TraceSource } from '../../../../renderer/plot/traceStackProps.ts';
import { type InventedChannel, syntheticSource } from '../../../support/syntheticSource.ts';

/** Ten samples a second; rich in every odd second, so that the channel switches at 1, 2, 3 ... 9 s. */
const square: InventedChannel = {
  id: 'up',
  name: 'up',
  role: 'upstreamO2',
  bank: 1,
  sensor: 1,
  timesS: Float64Array.from({ length: 101 }, (_, i) => i / 10),
  values: Float32Array.from({ length: 101 }, (_, i) => (Math.floor(i / 10) % 2 === 1 ? 0.8 : 0.1)),
  steps: false,
  gapS: 1,
};
const source = syntheticSource([square]);

describe('the cursor on foot', () => {
  it('goes from sample to sample, and stops at the ends', async () => {
    const walk = new CursorWalk(source);
    const stops: number[] = [];
    await walk.walk('up', 5, 3, (timeS) => stops.push(timeS));
    expect(stops).toEqual([5.1, 5.2, 5.3]);
    await walk.walk('up', 0.1, -5, (timeS) => stops.push(timeS));
    expect(stops.at(-1)).toBe(0);
  });

  it('adds up presses that come while it walks', async () => {
    const walk = new CursorWalk(source);
    const stops: number[] = [];
    const first = walk.walk('up', 5, 1, (timeS) => stops.push(timeS));
    const second = walk.walk('up', 99, 2, (timeS) => stops.push(timeS));
    await Promise.all([first, second]);
    expect(stops).toEqual([5.1, 5.2, 5.3]);
  });
});

describe('the next stop', () => {
  const windows = [{ id: 'w', name: 'Hold', startS: 3.3, endS: 6.6, finding: null, offer: false }];
  const notes = [{ id: 'n', startS: 3.1, endS: null, words: 'here' }];

  it.each([
    [2.5, 1, 3],
    [3, 1, 3.1],
    [3.1, 1, 3.3],
    [3.3, 1, 4],
    [3.3, -1, 3.1],
    [0.5, -1, null],
  ] as const)(
    'from %d s in direction %d is %s s: switch, note or edge, whichever is nearest',
    async (from, way, stop) => {
      expect(await nextStopTime(source, ['up'], windows, notes, from, way)).toBe(stop);
    },
  );

  it('is an edge or a note alone where no channel switches', async () => {
    expect(await nextStopTime(source, [], windows, [], 0, 1)).toBe(3.3);
  });
});

describe('counting switches between two cursors', () => {
  it('is by construction one a second, from either side', async () => {
    const never = () => false;
    expect(await countSwitches(source, 'up', 0.5, 7.5, never)).toEqual({ count: 7, complete: true });
    expect(await countSwitches(source, 'up', 7.5, 0.5, never)).toEqual({ count: 7, complete: true });
    expect(await countSwitches(source, 'up', 2.2, 2.8, never)).toEqual({ count: 0, complete: true });
  });

  it('is whole up to 500, and "more than" only where there are more', async () => {
    const switching = (switches: number): TraceSource => ({
      ...source,
      nextStop: async (_, fromS) => (fromS < switches ? Math.floor(fromS) + 1 : null),
    });
    const never = () => false;
    expect(await countSwitches(switching(500), 'up', 0, 900, never)).toEqual({ count: 500, complete: true });
    expect(await countSwitches(switching(501), 'up', 0, 900, never)).toEqual({ count: 500, complete: false });
  });

  it('is none where a question fails on the way', async () => {
    let asked = 0;
    const failing: TraceSource = {
      ...source,
      nextStop: (...question) => (++asked > 3 ? Promise.reject(new Error('gone')) : source.nextStop(...question)),
    };
    expect(await countSwitches(failing, 'up', 0, 10, () => false)).toBeNull();
  });

  it('is given up when a cursor moves on', async () => {
    let asked = 0;
    expect(await countSwitches(source, 'up', 0, 10, () => ++asked > 2)).toBeNull();
  });
});
