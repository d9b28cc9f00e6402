import { describe, expect, it } from 'vitest';
import type { TraceView } from '../../../../core/capture/traceView.ts';
import { zoomValues } from '../../../../renderer/plot/valueZoom.ts';
import { extentOf } from '../../../../renderer/plot/viewExtent.ts';

function view(times: readonly number[], low: readonly number[], high = low): TraceView {
  return {
    channelId: 'c',
    kind: low === high ? 'samples' : 'envelope',
    startS: 0,
    endS: 100,
    timesS: Float64Array.from(times),
    low: Float32Array.from(low),
    high: Float32Array.from(high),
    steps: false,
    gapS: 5,
  };
}

describe('the extent of what is in sight', () => {
  const trace = view([0, 10, 20, 30], [1, 2, 3, 4], [5, 6, 7, 8]);

  it('is from the lowest to the highest entry inside the stretch', () => {
    expect(extentOf([{ view: trace, shiftS: 0 }], { startS: 5, endS: 25 })).toEqual({ low: 2, high: 7, entries: 2 });
  });

  it('follows the shift of a comparison, and goes over several views', () => {
    const both = [
      { view: trace, shiftS: 100 },
      { view: view([110], [-1]), shiftS: 0 },
    ];
    expect(extentOf(both, { startS: 105, endS: 125 })).toEqual({ low: -1, high: 7, entries: 3 });
  });

  it('counts a line that only passes through, but not a gap', () => {
    const slow = view([0, 4, 90], [1, 3, 9]);
    expect(extentOf([{ view: slow, shiftS: 0 }], { startS: 1, endS: 2 })).toEqual({ low: 1, high: 3, entries: 2 });
    expect(extentOf([{ view: slow, shiftS: 0 }], { startS: 10, endS: 20 }).entries).toBe(0);
  });

  it('of nothing has no entries', () => {
    expect(extentOf([], { startS: 0, endS: 1 }).entries).toBe(0);
    expect(extentOf([{ view: view([], []), shiftS: 0 }], { startS: 0, endS: 1 }).entries).toBe(0);
  });
});

describe('zooming the values', () => {
  it('keeps the value under the pointer where it is', () => {
    expect(zoomValues([0, 100], 0.25, 0.5)).toEqual({ kind: 'hand', low: 12.5, high: 62.5 });
    expect(zoomValues([0, 100], 0, 2)).toEqual({ kind: 'hand', low: 0, high: 200 });
  });
});
