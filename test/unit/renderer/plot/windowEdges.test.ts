import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  edgeKeyTime,
  edgeZones,
  GRAB_PX,
  windowAt,
  withEdge,
  withStart,
} from '../../../../renderer/plot/windowEdges.ts';

const capture = { startS: 0, endS: 100 };

describe('the zones in which edges are grabbed', () => {
  it('lie around both edges of a wide window', () => {
    expect(edgeZones(100, 300)).toEqual({ start: 88, end: 288 });
  });

  it('leave the middle free where it can be grabbed, too', () => {
    for (const width of [24, 28, 40, 72, 300]) {
      const zones = edgeZones(100, 100 + width, 24);
      expect(zones.end - (zones.start + GRAB_PX)).toBeGreaterThanOrEqual(24);
    }
  });

  it('hold their edge and never cover each other, however narrow the window', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        (x, width) => {
          const zones = edgeZones(x, x + width);
          expect(zones.start + GRAB_PX).toBeLessThanOrEqual(zones.end + 1e-9);
          expect(zones.start).toBeLessThanOrEqual(x);
          expect(zones.start + GRAB_PX).toBeGreaterThanOrEqual(x - 1e-9);
          expect(zones.end).toBeLessThanOrEqual(x + width + 1e-9);
          expect(zones.end + GRAB_PX).toBeGreaterThanOrEqual(x + width);
        },
      ),
    );
  });
});

describe('moving an edge', () => {
  const window = { startS: 20, endS: 30 };

  it('leaves the other where it is', () => {
    expect(withEdge(window, 'start', 25, capture, 0.5)).toEqual({ startS: 25, endS: 30 });
    expect(withEdge(window, 'end', 50, capture, 0.5)).toEqual({ startS: 20, endS: 50 });
  });

  it('stops before the other edge and at the ends of the capture', () => {
    expect(withEdge(window, 'start', 99, capture, 0.5)).toEqual({ startS: 29.5, endS: 30 });
    expect(withEdge(window, 'end', 1, capture, 0.5)).toEqual({ startS: 20, endS: 20.5 });
    expect(withEdge(window, 'start', -5, capture, 0.5).startS).toBe(0);
    expect(withEdge(window, 'end', 500, capture, 0.5).endS).toBe(100);
  });

  it('moves the whole window without changing its length', () => {
    expect(withStart(window, 60, capture)).toEqual({ startS: 60, endS: 70 });
    expect(withStart(window, -3, capture)).toEqual({ startS: 0, endS: 10 });
    expect(withStart(window, 95, capture)).toEqual({ startS: 90, endS: 100 });
  });
});

describe('an edge as a slider', () => {
  const range = { startS: 0, endS: 29.5 };
  const key = (name: string, shiftKey = false) => edgeKeyTime({ key: name, shiftKey }, 20, 0.1, range);

  it.each([
    ['ArrowRight', 20.1],
    ['ArrowUp', 20.1],
    ['ArrowLeft', 19.9],
    ['PageUp', 25],
    ['PageDown', 15],
    ['Home', 0],
    ['End', 29.5],
  ])('%s goes to %d s', (name, timeS) => {
    expect(key(name)).toBeCloseTo(timeS, 9);
  });

  it('goes ten steps with Shift and never past its range', () => {
    expect(key('ArrowRight', true)).toBeCloseTo(21, 9);
    expect(edgeKeyTime({ key: 'PageUp', shiftKey: false }, 29, 0.1, range)).toBe(29.5);
  });

  it('leaves every other key alone', () => {
    expect(key('Tab')).toBeNull();
    expect(key('a')).toBeNull();
  });
});

describe('the window under a time', () => {
  const windows = [
    { id: 'long', startS: 10, endS: 90 },
    { id: 'short', startS: 40, endS: 50 },
  ];

  it('is the shortest one, so that none is out of reach', () => {
    expect(windowAt(windows, 45, null)?.id).toBe('short');
    expect(windowAt(windows, 20, null)?.id).toBe('long');
    expect(windowAt(windows, 5, null)).toBeNull();
  });

  it('is the selected one while it is there', () => {
    expect(windowAt(windows, 45, 'long')?.id).toBe('long');
  });
});
