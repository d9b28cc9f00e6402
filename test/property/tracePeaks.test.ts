import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type InventedChannel, viewOf } from '../support/syntheticSource.ts';
import { drawn, PAPER, PLAIN } from '../support/traceOnPaper.ts';

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
        const map = { ...PAPER, ...stretch };
        const wish = broken ? { ...PLAIN, dash: [9, 4] } : PLAIN;
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
        const pen = drawn(view, { ...PAPER, ...stretch });
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

function channelOf(values: Float32Array, steps: boolean): InventedChannel {
  const timesS = Float64Array.from(values, (_, i) => i / 100);
  return { id: 'c', name: 'c', role: 'other', bank: null, sensor: null, timesS, values, steps, gapS: 1 };
}

function inside(timeS: number, stretch: { startS: number; endS: number }): boolean {
  return timeS >= stretch.startS && timeS <= stretch.endS;
}
