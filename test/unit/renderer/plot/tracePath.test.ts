import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TraceView } from '../../../../core/capture/traceView.ts';
import { drawTrace, type PaperMap, type TraceSinks, type TraceWish } from '../../../../renderer/plot/tracePath.ts';
import { type InventedChannel, viewOf } from '../../../support/syntheticSource.ts';

/** 1000 px for 10 s, 100 px for 0 to 1: 100 px a second, and value 1 at the top. */
const paper: PaperMap = { left: 0, right: 1000, top: 0, bottom: 100, startS: 0, endS: 10, low: 0, high: 1 };
const plain: TraceWish = { shiftS: 0, dash: [], thickness: 2, dotRadius: 2, dotSpacing: 40 };

/** A pen that writes down what it is told: a line in the letters of a path, dots, columns. */
class Pen {
  readonly strokes: string[] = [];
  readonly points: [number, number][] = [];
  readonly dots: [number, number][] = [];
  readonly columns: { x: number; y: number; width: number; height: number }[] = [];

  readonly sinks: TraceSinks = {
    line: {
      moveTo: (x, y) => this.put('M', x, y),
      lineTo: (x, y) => this.put('L', x, y),
    },
    dots: {
      moveTo: () => undefined,
      arc: (x, y) => {
        this.dots.push([x, y]);
      },
    },
    columns: {
      rect: (x, y, width, height) => {
        this.columns.push({ x, y, width, height });
      },
    },
  };

  /** Everything drawn, upwards and downwards, without the half of the pen that lies beyond the value. */
  heights(thickness: number): number[] {
    const columns = this.columns.flatMap(({ y, height }) => [y + thickness / 2, y + height - thickness / 2]);
    return [...this.points.map(([, y]) => y), ...this.dots.map(([, y]) => y), ...columns];
  }

  /** Whether a point lies on a column, or on a vertical stroke or corner of the line at that pixel. */
  covers(x: number, y: number): boolean {
    const onColumn = this.columns.some(
      (column) =>
        x >= column.x - 1e-6 && x <= column.x + column.width + 1e-6 && y >= column.y && y <= column.y + column.height,
    );
    const here = this.points.filter((point) => Math.abs(point[0] - x) < 1e-6).map((point) => point[1]);
    return onColumn || (here.length > 0 && y >= Math.min(...here) - 1e-3 && y <= Math.max(...here) + 1e-3);
  }

  private put(letter: string, x: number, y: number): void {
    const near = (value: number): number => Math.round(value * 1000) / 1000;
    this.strokes.push(`${letter}${near(x)},${near(y)}`);
    this.points.push([x, y]);
  }
}

function drawn(view: TraceView, map: PaperMap = paper, wish: TraceWish = plain): Pen {
  const pen = new Pen();
  drawTrace(view, map, wish, pen.sinks);
  return pen;
}

function samples(points: readonly (readonly [number, number])[], more: Partial<TraceView> = {}): TraceView {
  const low = Float32Array.from(points, ([, value]) => value);
  const timesS = Float64Array.from(points, ([timeS]) => timeS);
  return {
    channelId: 'c',
    kind: 'samples',
    startS: 0,
    endS: 10,
    timesS,
    low,
    high: low,
    steps: false,
    gapS: 2,
    ...more,
  };
}

function buckets(entries: readonly (readonly [number, number, number])[], more: Partial<TraceView> = {}): TraceView {
  return {
    ...samples(entries.map(([timeS, low]) => [timeS, low])),
    kind: 'envelope',
    high: Float32Array.from(entries, ([, , high]) => high),
    ...more,
  };
}

describe('samples', () => {
  it('are joined by straight lines', () => {
    const { strokes } = drawn(
      samples([
        [1, 0],
        [2, 1],
        [3, 0.5],
      ]),
    );
    expect(strokes).toEqual(['M100,100', 'L200,0', 'L300,50']);
  });

  it('that the instrument holds are steps', () => {
    const { strokes } = drawn(
      samples(
        [
          [1, 0],
          [2, 1],
        ],
        { steps: true },
      ),
    );
    expect(strokes).toEqual(['M100,100', 'L200,100', 'L200,0']);
  });

  it('are not joined over a gap', () => {
    const { strokes } = drawn(
      samples([
        [1, 0],
        [2, 1],
        [5, 1],
        [6, 0],
      ]),
    );
    expect(strokes).toEqual(['M100,100', 'L200,0', 'M500,0', 'L600,100']);
  });

  it('that stand alone between two gaps are dots, however dense the rest is', () => {
    const { dots } = drawn(
      samples([
        [1, 0],
        [1.1, 0],
        [5, 1],
        [9, 0],
        [9.1, 0],
      ]),
      paper,
      { ...plain, dotSpacing: 1e9 },
    );
    expect(dots).toEqual([[500, 0]]);
  });

  it('are dotted when sparse and not when dense', () => {
    const sparse = Array.from({ length: 10 }, (_, i) => [i, 0.5] as const);
    const dense = Array.from({ length: 100 }, (_, i) => [i / 10, 0.5] as const);
    expect(drawn(samples(sparse)).dots).toHaveLength(10);
    expect(drawn(samples(dense)).dots).toHaveLength(0);
  });

  it('run in from beyond both edges of the paper', () => {
    const zoomed = { ...paper, startS: 4, endS: 5 };
    const { strokes } = drawn(
      samples([
        [2, 0],
        [3.9, 0.5],
        [5.1, 0.5],
        [7, 1],
      ]),
      zoomed,
    );
    expect(strokes).toEqual(['M-100,50', 'L1100,50']);
  });

  it('far beside the paper keep the slope of their line, though a path holds only single precision', () => {
    const zoomed = { ...paper, startS: 4999, endS: 5001 };
    const { points } = drawn(
      samples(
        [
          [0, 0],
          [10_000, 1],
        ],
        { gapS: 1e6 },
      ),
      zoomed,
    );
    const [[x0, y0] = [0, 0], [x1, y1] = [0, 0]] = points;
    expect(x0).toBeGreaterThan(-10_000);
    expect(x1).toBeLessThan(10_000);
    const middle = y0 + ((500 - x0) / (x1 - x0)) * (y1 - y0);
    expect(middle).toBeCloseTo(50, 6);
  });

  it('are moved by the shift of a comparison', () => {
    const { strokes } = drawn(
      samples([
        [100, 0],
        [101, 1],
      ]),
      paper,
      { ...plain, shiftS: -100 },
    );
    expect(strokes).toEqual(['M0,100', 'L100,0']);
  });

  it('without any entry draw nothing', () => {
    const { points, dots, columns } = drawn(samples([]));
    expect([points, dots, columns]).toEqual([[], [], []]);
  });
});

describe('buckets', () => {
  it('are vertical strokes joined to one line, entered at the nearer end', () => {
    const { strokes } = drawn(
      buckets([
        [1, 0, 0.5],
        [2, 0.4, 1],
        [3, 0.9, 1],
      ]),
    );
    expect(strokes).toEqual(['M100,100', 'L100,50', 'L200,60', 'L200,0', 'L300,0', 'L300,10']);
  });

  it('keep gaps, and a lone bucket of one value is a dot', () => {
    const { strokes, dots } = drawn(
      buckets([
        [1, 0.2, 0.4],
        [5, 0.5, 0.5],
        [9, 0.2, 0.4],
      ]),
    );
    expect(strokes.filter((stroke) => stroke.startsWith('M'))).toHaveLength(3);
    expect(dots).toEqual([[500, 50]]);
  });
});

describe('entries closer than two pixels', () => {
  /** One entry a pixel, from pixel 100 on. */
  const close = (entries: readonly (readonly [number, number])[], more: Partial<TraceView> = {}) =>
    buckets(
      entries.map(([low, high], i) => [1 + i / 100, low, high]),
      more,
    );

  it('are columns as wide as the pen, from the lowest to the highest value', () => {
    const { columns, strokes } = drawn(
      close([
        [0.2, 0.6],
        [0.3, 0.5],
      ]),
    );
    expect(strokes).toEqual([]);
    expect(columns.map(rounded)).toEqual([
      { x: 99, y: 39, width: 2, height: 42 },
      { x: 100, y: 49, width: 2, height: 22 },
    ]);
  });

  it('that do not touch are stretched until they meet half way', () => {
    const { columns } = drawn(
      close([
        [0.1, 0.2],
        [0.8, 0.9],
      ]),
    );
    // The pen is 2 px: from 1 px above the highest to 1 px below the lowest.
    expect(columns.map(rounded)).toEqual([
      { x: 99, y: 49, width: 2, height: 42 },
      { x: 100, y: 9, width: 2, height: 42 },
    ]);
  });

  it('that the instrument holds are stretched by the later alone', () => {
    const { columns } = drawn(
      close(
        [
          [0.1, 0.2],
          [0.8, 0.9],
        ],
        { steps: true },
      ),
    );
    expect(columns.map(rounded)).toEqual([
      { x: 99, y: 79, width: 2, height: 12 },
      { x: 100, y: 9, width: 2, height: 72 },
    ]);
  });

  it('keep their gaps', () => {
    const { columns } = drawn(
      close(
        [
          [0.1, 0.2],
          [0.8, 0.9],
        ],
        { gapS: 0.001 },
      ),
    );
    expect(columns.map(rounded).map(({ height }) => height)).toEqual([12, 12]);
  });

  it('of a broken line are cut where it is thin, in time and not on the screen, and never where it is tall', () => {
    const flat = close(Array.from({ length: 200 }, () => [0.5, 0.5] as const));
    const broken = { ...plain, dash: [9, 4] };
    const cut = drawn(flat, paper, broken).columns;
    expect(cut.length).toBeLessThan(200);
    expect(cut.length).toBeGreaterThan(200 * (9 / 13) - 10);
    const later = { ...paper, startS: 0.5, endS: 10.5 };
    const moved = drawn(flat, later, broken).columns;
    expect(moved.map(({ x }) => Math.round(x + 50))).toEqual(cut.map(({ x }) => Math.round(x)));
    const tall = close(Array.from({ length: 200 }, () => [0.2, 0.8] as const));
    expect(drawn(tall, paper, broken).columns).toHaveLength(200);
  });
});

describe('no peak is lost', () => {
  const noisy = fc.record({
    values: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 400, maxLength: 2400 }),
    spikeAt: fc.double({ min: 0, max: 1, noNaN: true }),
    steps: fc.boolean(),
    from: fc.double({ min: 0, max: 0.9, noNaN: true }),
    width: fc.double({ min: 0.01, max: 1, noNaN: true }),
    buckets: fc.integer({ min: 20, max: 1500 }),
  });

  it('in 1000 random views: the highest and lowest pixel drawn are those of the samples in sight', () => {
    fc.assert(
      fc.property(noisy, fc.boolean(), ({ values, spikeAt, steps, from, width, buckets: count }, broken) => {
        const spiked = Float32Array.from(values, (value) => value * 0.1 + 0.45);
        spiked[Math.floor(spikeAt * (spiked.length - 1))] = 1;
        const channel = channelOf(spiked, steps);
        const whole = channel.timesS[channel.timesS.length - 1] ?? 1;
        const stretch = { startS: from * whole, endS: Math.min(whole, (from + width) * whole + 0.02) };
        const map = { ...paper, ...stretch };
        const wish = broken ? { ...plain, dash: [9, 4] } : plain;
        const pen = drawn(viewOf(channel, stretch, count), map, wish);
        const seen = spiked.filter((_, i) => inside(channel.timesS[i] ?? -1, stretch));
        if (seen.length === 0) return;
        const ys = pen.heights(wish.thickness);
        // In the gap of a broken line something may be missing that is no taller than the pen.
        const within = broken ? wish.thickness : 1e-3;
        expect(Math.abs(Math.min(...ys) - (100 - 100 * Math.max(...seen)))).toBeLessThanOrEqual(within);
        expect(Math.abs(Math.max(...ys) - (100 - 100 * Math.min(...seen)))).toBeLessThanOrEqual(within);
      }),
      { numRuns: 1000 },
    );
  });

  it('every sample lies under the ink of its own bucket', () => {
    fc.assert(
      fc.property(noisy, ({ values, steps, buckets: count }) => {
        const channel = channelOf(Float32Array.from(values), steps);
        const stretch = { startS: 0, endS: channel.timesS[channel.timesS.length - 1] ?? 1 };
        const view = viewOf(channel, stretch, count);
        const pen = drawn(view, { ...paper, ...stretch });
        const xOf = (timeS: number): number => (1000 * timeS) / stretch.endS;
        for (let i = 0; i < view.timesS.length; i += 7) {
          for (const value of [view.low[i], view.high[i]]) {
            expect(pen.covers(xOf(view.timesS[i] ?? 0), 100 - 100 * (value ?? 0))).toBe(true);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});

function rounded(column: { x: number; y: number; width: number; height: number }) {
  const near = (value: number): number => Math.round(value * 1000) / 1000;
  return { x: near(column.x), y: near(column.y), width: near(column.width), height: near(column.height) };
}

function channelOf(values: Float32Array, steps: boolean): InventedChannel {
  const timesS = Float64Array.from(values, (_, i) => i / 100);
  return { id: 'c', name: 'c', role: 'other', bank: null, sensor: null, timesS, values, steps, gapS: 1 };
}

function inside(timeS: number, stretch: { startS: number; endS: number }): boolean {
  return timeS >= stretch.startS && timeS <= stretch.endS;
}
