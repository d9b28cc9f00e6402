import { describe, expect, it } from 'vitest';
import { buckets, drawn, PAPER, PLAIN, samples } from '../../../support/traceOnPaper.ts';

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
      PAPER,
      { ...PLAIN, dotSpacing: 1e9 },
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
    const zoomed = { ...PAPER, startS: 4, endS: 5 };
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
    const zoomed = { ...PAPER, startS: 4999, endS: 5001 };
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
      PAPER,
      { ...PLAIN, shiftS: -100 },
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
