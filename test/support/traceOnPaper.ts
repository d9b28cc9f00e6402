// Traces drawn on paper that can be read off: a pen that writes down what it is told, and views from a few numbers.

import type { TraceView } from '../../core/capture/traceView.ts';
import { drawTrace, type PaperMap, type TraceSinks, type TraceWish } from '../../renderer/plot/tracePath.ts';

/** 1000 px for 10 s, 100 px for 0 to 1: 100 px a second, and value 1 at the top. */
export const PAPER: PaperMap = { left: 0, right: 1000, top: 0, bottom: 100, startS: 0, endS: 10, low: 0, high: 1 };
export const PLAIN: TraceWish = { shiftS: 0, dash: [], thickness: 2, dotRadius: 2, dotSpacing: 40 };

/** A pen that writes down what it is told: a line in the letters of a path, dots, columns. */
export class Pen {
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

export function drawn(view: TraceView, map: PaperMap = PAPER, wish: TraceWish = PLAIN): Pen {
  const pen = new Pen();
  drawTrace(view, map, wish, pen.sinks);
  return pen;
}

export function samples(points: readonly (readonly [number, number])[], more: Partial<TraceView> = {}): TraceView {
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

export function buckets(
  entries: readonly (readonly [number, number, number])[],
  more: Partial<TraceView> = {},
): TraceView {
  return {
    ...samples(entries.map(([timeS, low]) => [timeS, low])),
    kind: 'envelope',
    high: Float32Array.from(entries, ([, , high]) => high),
    ...more,
  };
}
