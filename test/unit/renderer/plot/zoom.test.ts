import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TimeScale } from '../../../../renderer/plot/timeScale.ts';
import { clampStretch, panBy, showTime, zoomAt, zoomLimits } from '../../../../renderer/plot/zoom.ts';
import { sineChannel } from '../../../support/inventedDrive.ts';
import { syntheticCapture } from '../../../support/syntheticSource.ts';

const limits = { startS: 0, endS: 400, leastSpanS: 0.5 };

describe('the limits of a capture', () => {
  const capture = syntheticCapture('two rates', [
    sineChannel({ id: 'slow', rateHz: 2, durationS: 100 }),
    sineChannel({ id: 'fast', rateHz: 1000, durationS: 100 }),
  ]);

  it('are five samples of the fastest channel in view, and the whole capture', () => {
    expect(zoomLimits(capture, ['slow']).leastSpanS).toBeCloseTo(2.5, 2);
    expect(zoomLimits(capture, ['slow', 'fast']).leastSpanS).toBeCloseTo(0.005, 4);
    expect(zoomLimits(capture, ['slow']).endS).toBe(capture.durationS);
  });

  it('hold without any channel, and for a capture of one moment', () => {
    expect(zoomLimits(capture, []).leastSpanS).toBeGreaterThan(0);
    const moment = { ...capture, durationS: 0 };
    const { startS, endS, leastSpanS } = zoomLimits(moment, ['slow']);
    expect(endS - startS).toBeGreaterThan(0);
    expect(leastSpanS).toBeLessThanOrEqual(endS - startS);
  });
});

describe('zooming', () => {
  it('halves the stretch around the anchor', () => {
    expect(zoomAt({ startS: 100, endS: 200 }, 150, 0.5, limits)).toEqual({ startS: 125, endS: 175 });
    expect(zoomAt({ startS: 100, endS: 200 }, 100, 0.5, limits)).toEqual({ startS: 100, endS: 150 });
  });

  it('stops at the least stretch and at the whole capture', () => {
    const close = zoomAt({ startS: 100, endS: 101 }, 100.5, 0.01, limits);
    expect(close.endS - close.startS).toBeCloseTo(0.5, 9);
    expect(zoomAt({ startS: 100, endS: 200 }, 150, 1000, limits)).toEqual({ startS: 0, endS: 400 });
  });

  it('keeps the sample under the pointer within one pixel while no end is in the way', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 150, max: 250, noNaN: true }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (anchorS, factor) => {
          const before = { startS: 150, endS: 250 };
          const after = zoomAt(before, anchorS, factor, limits);
          const x = new TimeScale(before, 72, 1000).xOf(anchorS);
          expect(Math.abs(new TimeScale(after, 72, 1000).xOf(anchorS) - x)).toBeLessThan(1e-6);
        },
      ),
    );
  });
});

describe('panning', () => {
  it('moves without changing the length, and stops at both ends', () => {
    expect(panBy({ startS: 10, endS: 30 }, 5, limits)).toEqual({ startS: 15, endS: 35 });
    expect(panBy({ startS: 10, endS: 30 }, -50, limits)).toEqual({ startS: 0, endS: 20 });
    expect(panBy({ startS: 380, endS: 395 }, 50, limits)).toEqual({ startS: 385, endS: 400 });
  });

  it('shows a time with some room around it, and leaves the view alone where it is in sight', () => {
    const visible = { startS: 100, endS: 200 };
    expect(showTime(visible, 150, limits)).toBe(visible);
    expect(showTime(visible, 250, limits)).toEqual({ startS: 160, endS: 260 });
    expect(showTime(visible, 90, limits)).toEqual({ startS: 80, endS: 180 });
  });
});

it('never leaves the capture and never shows less than the least stretch, whatever is asked', () => {
  const any = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(any, any, any, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (a, b, anchorS, factor) => {
      const stretch = { startS: Math.min(a, b), endS: Math.max(a, b) + 1e-3 };
      for (const next of [
        clampStretch(stretch, limits),
        zoomAt(clampStretch(stretch, limits), anchorS, factor, limits),
        panBy(clampStretch(stretch, limits), anchorS, limits),
      ]) {
        expect(next.startS).toBeGreaterThanOrEqual(limits.startS);
        expect(next.endS).toBeLessThanOrEqual(limits.endS + 1e-9);
        expect(next.endS - next.startS).toBeGreaterThanOrEqual(limits.leastSpanS - 1e-6);
      }
    }),
  );
});
