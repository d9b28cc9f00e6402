import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TraceView } from '../../../../core/capture/traceView.ts';
import { drawTrace, type PaperMap, type TraceWish } from '../../../../renderer/plot/tracePath.ts';
import { type InventedChannel, viewOf } from '../../../support/syntheticSource.ts';

/** 1000 px for 10 s, 100 px for 0 to 1: 100 px a second, and value 1 at the top. */
const paper: PaperMap = { left: 0, right: 1000, top: 0, bottom: 100, startS: 0, endS: 10, low: 0, high: 1 };
const plain: TraceWish = { shiftS: 0, dashed: false, thickness: 2, dotRadius: 2, dotSpacing: 40 };

/** A pen that writes down what it is told, in the letters of a path: "M0,100 L100,50". */
class Pen {
  readonly strokes: string[] = [];
  readonly points: [number, number][] = [];
  readonly dots: [number, number][] = [];
  readonly rects: [number, number, number, number][] = [];
  moveTo(x: number, y: number): void {
    this.put('M', x, y);
  }
  lineTo(x: number, y: number): void {
    this.put('L', x, y);
  }
  arc(x: number, y: number): void {
    this.dots.push([x, y]);
  }
  rect(x: number, y: number, width: number, height: number): void {
    this.rects.push([x, y, width, height]);
  }
  private put(letter: string, x: number, y: number): void {
    const near = (value: number): number => Math.round(value * 1000) / 1000;
    this.strokes.push(`${letter}${near(x)},${near(y)}`);
    this.points.push([x, y]);
  }
}

function drawn(view: TraceView, map: PaperMap = paper, wish: TraceWish = plain): { line: Pen; solid: Pen } {
  const line = new Pen();
  const solid = new Pen();
  drawTrace(view, map, wish, line, solid);
  return { line, solid };
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
    const { line } = drawn(
      samples([
        [1, 0],
        [2, 1],
        [3, 0.5],
      ]),
    );
    expect(line.strokes).toEqual(['M100,100', 'L200,0', 'L300,50']);
  });

  it('that the instrument holds are steps', () => {
    const { line } = drawn(
      samples(
        [
          [1, 0],
          [2, 1],
        ],
        { steps: true },
      ),
    );
    expect(line.strokes).toEqual(['M100,100', 'L200,100', 'L200,0']);
  });

  it('are not joined over a gap', () => {
    const { line } = drawn(
      samples([
        [1, 0],
        [2, 1],
        [5, 1],
        [6, 0],
      ]),
    );
    expect(line.strokes).toEqual(['M100,100', 'L200,0', 'M500,0', 'L600,100']);
  });

  it('that stand alone between two gaps are dots, however dense the rest is', () => {
    const { solid } = drawn(
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
    expect(solid.dots).toEqual([[500, 0]]);
  });

  it('are dotted when sparse and not when dense', () => {
    const sparse = Array.from({ length: 10 }, (_, i) => [i, 0.5] as const);
    const dense = Array.from({ length: 100 }, (_, i) => [i / 10, 0.5] as const);
    expect(drawn(samples(sparse)).solid.dots).toHaveLength(10);
    expect(drawn(samples(dense)).solid.dots).toHaveLength(0);
  });

  it('run in from beyond both edges of the paper', () => {
    const zoomed = { ...paper, startS: 4, endS: 5 };
    const { line } = drawn(
      samples([
        [2, 0],
        [3.9, 0.5],
        [5.1, 0.5],
        [7, 1],
      ]),
      zoomed,
    );
    expect(line.strokes).toEqual(['M-100,50', 'L1100,50']);
  });

  it('far beside the paper keep the slope of their line, though a path holds only single precision', () => {
    const zoomed = { ...paper, startS: 4999, endS: 5001 };
    const { line } = drawn(
      samples(
        [
          [0, 0],
          [10_000, 1],
        ],
        { gapS: 1e6 },
      ),
      zoomed,
    );
    const [[x0, y0] = [0, 0], [x1, y1] = [0, 0]] = line.points;
    expect(x0).toBeGreaterThan(-10_000);
    expect(x1).toBeLessThan(10_000);
    const middle = y0 + ((500 - x0) / (x1 - x0)) * (y1 - y0);
    expect(middle).toBeCloseTo(50, 6);
  });

  it('are moved by the shift of a comparison', () => {
    const { line } = drawn(
      samples([
        [100, 0],
        [101, 1],
      ]),
      paper,
      { ...plain, shiftS: -100 },
    );
    expect(line.strokes).toEqual(['M0,100', 'L100,0']);
  });

  it('without any entry draw nothing', () => {
    const { line, solid } = drawn(samples([]));
    expect([line.points, solid.dots, solid.rects]).toEqual([[], [], []]);
  });
});

describe('buckets', () => {
  it('are vertical strokes joined to one line, entered at the nearer end', () => {
    const { line } = drawn(
      buckets([
        [1, 0, 0.5],
        [2, 0.4, 1],
        [3, 0.9, 1],
      ]),
    );
    expect(line.strokes).toEqual(['M100,100', 'L100,50', 'L200,60', 'L200,0', 'L300,0', 'L300,10']);
  });

  it('of a broken line are laid down solid where they are tall, so that no peak falls between two dashes', () => {
    const entries = [
      [1, 0.5, 0.5],
      [2, 0.1, 0.9],
      [3, 0.5, 0.51],
    ] as const;
    expect(drawn(buckets(entries)).solid.rects).toEqual([]);
    const { solid } = drawn(buckets(entries), paper, { ...plain, dashed: true });
    expect(solid.rects).toHaveLength(1);
    expect(solid.rects[0]?.map(Math.round)).toEqual([199, 10, 2, 80]);
  });

  it('keep gaps, and a lone bucket of one value is a dot', () => {
    const { line, solid } = drawn(
      buckets([
        [1, 0.2, 0.4],
        [5, 0.5, 0.5],
        [9, 0.2, 0.4],
      ]),
    );
    expect(line.strokes.filter((stroke) => stroke.startsWith('M'))).toHaveLength(3);
    expect(solid.dots).toEqual([[500, 50]]);
  });
});

describe('no peak is lost', () => {
  const noisy = fc.record({
    values: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 400, maxLength: 1200 }),
    spikeAt: fc.double({ min: 0, max: 1, noNaN: true }),
    steps: fc.boolean(),
    dashed: fc.boolean(),
    from: fc.double({ min: 0, max: 0.9, noNaN: true }),
    width: fc.double({ min: 0.01, max: 1, noNaN: true }),
    buckets: fc.integer({ min: 20, max: 300 }),
  });

  it('in 1000 random views: the highest and lowest pixel drawn are those of the samples in sight', () => {
    fc.assert(
      fc.property(noisy, ({ values, spikeAt, steps, dashed, from, width, buckets: count }) => {
        const spiked = Float32Array.from(values, (value) => value * 0.1 + 0.45);
        spiked[Math.floor(spikeAt * (spiked.length - 1))] = 1;
        const channel = channelOf(spiked, steps);
        const whole = channel.timesS[channel.timesS.length - 1] ?? 1;
        const stretch = { startS: from * whole, endS: Math.min(whole, (from + width) * whole + 0.02) };
        const view = viewOf(channel, stretch, count);
        const map = { ...paper, ...stretch };
        const { line, solid } = drawn(view, map, { ...plain, dashed });
        const seen = spiked.filter((_, i) => inside(channel.timesS[i] ?? -1, stretch));
        if (seen.length === 0) return;
        const ys = [...line.points.map(([, y]) => y), ...solid.rects.flatMap(([, y, , h]) => [y, y + h])];
        expect(Math.min(...ys)).toBeCloseTo(100 - 100 * Math.max(...seen), 3);
        expect(Math.max(...ys)).toBeCloseTo(100 - 100 * Math.min(...seen), 3);
      }),
      { numRuns: 1000 },
    );
  });

  it('every sample lies on the stroke of its own bucket', () => {
    fc.assert(
      fc.property(noisy, ({ values, steps, buckets: count }) => {
        const channel = channelOf(Float32Array.from(values), steps);
        const stretch = { startS: 0, endS: channel.timesS[channel.timesS.length - 1] ?? 1 };
        const map = { ...paper, ...stretch };
        const { line } = drawn(viewOf(channel, stretch, count), map);
        const bucketPx = 1000 / count;
        const extents = new Map<number, [number, number]>();
        for (const [x, y] of line.points) {
          const at = Math.floor(x / bucketPx);
          const [top, bottom] = extents.get(at) ?? [y, y];
          extents.set(at, [Math.min(top, y), Math.max(bottom, y)]);
        }
        values.forEach((value, i) => {
          const at = Math.min(count - 1, Math.floor(((channel.timesS[i] ?? 0) / stretch.endS) * count));
          const [top, bottom] = extents.get(at) ?? [1, 0];
          const y = 100 - 100 * Math.fround(value);
          expect(y).toBeGreaterThanOrEqual(top - 1e-3);
          expect(y).toBeLessThanOrEqual(bottom + 1e-3);
        });
      }),
      { numRuns: 60 },
    );
  });
});

function channelOf(values: Float32Array, steps: boolean): InventedChannel {
  const timesS = Float64Array.from(values, (_, i) => i / 100);
  return { id: 'c', name: 'c', role: 'other', bank: null, sensor: null, timesS, values, steps, gapS: 1 };
}

function inside(timeS: number, stretch: { startS: number; endS: number }): boolean {
  return timeS >= stretch.startS && timeS <= stretch.endS;
}
