import { describe, expect, it } from 'vitest';
import { viewByGrip, viewByKey } from '../../../../renderer/plot/viewGrip.ts';

const limits = { startS: 0, endS: 400, leastSpanS: 1 };
const visible = { startS: 100, endS: 140 };

describe('the handle of the strip', () => {
  it('moves as a whole and stops at the ends of the capture', () => {
    expect(viewByGrip(visible, 'body', 30, limits)).toEqual({ startS: 130, endS: 170 });
    expect(viewByGrip(visible, 'body', -500, limits)).toEqual({ startS: 0, endS: 40 });
  });

  it('stretches by one edge; the edges limit each other', () => {
    expect(viewByGrip(visible, 'start', -20, limits)).toEqual({ startS: 80, endS: 140 });
    expect(viewByGrip(visible, 'end', -500, limits)).toEqual({ startS: 100, endS: 101 });
  });

  it.each([
    ['ArrowRight', 'body', { startS: 104, endS: 144 }],
    ['PageUp', 'body', { startS: 60, endS: 100 }],
    ['Home', 'body', { startS: 0, endS: 40 }],
    ['End', 'body', { startS: 360, endS: 400 }],
    ['ArrowLeft', 'start', { startS: 99.5, endS: 140 }],
    ['PageDown', 'end', { startS: 100, endS: 145 }],
    ['End', 'end', { startS: 100, endS: 400 }],
  ] as const)('%s on its %s', (key, grip, stretch) => {
    expect(viewByKey(key, grip, visible, limits, 0.5)).toEqual(stretch);
  });

  it('zooms with + and −, and leaves other keys alone', () => {
    const closer = viewByKey('+', 'body', visible, limits, 0.5);
    expect((closer?.endS ?? 0) - (closer?.startS ?? 0)).toBeCloseTo(40 / 1.5, 9);
    expect(viewByKey('-', 'body', visible, limits, 0.5)).toEqual({ startS: 90, endS: 150 });
    expect(viewByKey('x', 'body', visible, limits, 0.5)).toBeNull();
  });
});
