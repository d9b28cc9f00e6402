import { describe, expect, it } from 'vitest';
import type { TraceView } from '../../../../core/capture/traceView.ts';
import { buckets, drawn, PAPER, PLAIN } from '../../../support/traceOnPaper.ts';

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
    const broken = { ...PLAIN, dash: [9, 4] };
    const cut = drawn(flat, PAPER, broken).columns;
    expect(cut.length).toBeLessThan(200);
    expect(cut.length).toBeGreaterThan(200 * (9 / 13) - 10);
    const later = { ...PAPER, startS: 0.5, endS: 10.5 };
    const moved = drawn(flat, later, broken).columns;
    expect(moved.map(({ x }) => Math.round(x + 50))).toEqual(cut.map(({ x }) => Math.round(x)));
    const tall = close(Array.from({ length: 200 }, () => [0.2, 0.8] as const));
    expect(drawn(tall, PAPER, broken).columns).toHaveLength(200);
  });
});

function rounded(column: { x: number; y: number; width: number; height: number }) {
  const near = (value: number): number => Math.round(value * 1000) / 1000;
  return { x: near(column.x), y: near(column.y), width: near(column.width), height: near(column.height) };
}
