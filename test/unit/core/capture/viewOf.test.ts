import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../../core/capture/channel.ts';
import { channelFacts } from '../../../../core/capture/channelFacts.ts';
import { drawerOf } from '../../../../core/capture/drawerOf.ts';
import { buildPyramid } from '../../../../core/capture/pyramid.ts';
import { sampleCount, type TimeBase, timeAt } from '../../../../core/capture/timeBase.ts';
import { viewOf } from '../../../../core/capture/viewOf.ts';

function channelOf(values: Float32Array, time: TimeBase): Channel {
  return {
    id: 'c0',
    name: 'O2 B1S1',
    role: 'upstreamO2',
    bank: 1,
    sensor: 1,
    unit: 'V',
    fileUnit: 'V',
    time,
    values,
    facts: channelFacts(time, values),
  };
}

function regular(length: number, stepS = 0.001): TimeBase {
  return { kind: 'regular', startS: 0, stepS, length };
}

describe('a view for drawing', () => {
  const values = Float32Array.from({ length: 10_000 }, (_, i) => Math.fround(0.45 + 0.4 * Math.sin(i / 50)));
  const channel = channelOf(values, regular(values.length));
  const pyramid = buildPyramid(values);

  it('gives the samples themselves where they are few, with one more on either side', () => {
    const view = viewOf(channel, pyramid, 1, 1.01, 500);
    expect(view.kind).toBe('samples');
    expect(view.timesS[0]).toBeCloseTo(0.999, 12);
    expect(view.timesS[view.timesS.length - 1]).toBeCloseTo(1.011, 12);
    expect(view.low).toEqual(view.high);
    expect(view.low[1]).toBe(values[1000]);
  });

  it('loses no peak at any zoom', () => {
    const spiked = values.slice();
    spiked[7777] = 5;
    spiked[3333] = -5;
    const own = channelOf(spiked, regular(spiked.length));
    for (const buckets of [1, 7, 100, 999, 2000]) {
      const view = viewOf(own, buildPyramid(spiked), 0, 10, buckets);
      expect(Math.max(...view.high)).toBe(5);
      expect(Math.min(...view.low)).toBe(-5);
      expect(view.timesS.length).toBeLessThanOrEqual(buckets);
    }
  });

  it('puts every sample into one bucket and only one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.double({ min: 0, max: 9, noNaN: true }),
        fc.double({ min: 0.5, max: 10, noNaN: true }),
        (buckets, startS, lengthS) => {
          const endS = Math.min(startS + lengthS, 20);
          const view = viewOf(channel, pyramid, startS, endS, buckets);
          if (view.kind === 'samples') return;
          const inside = values.filter((_, i) => timeAt(channel.time, i) >= startS && timeAt(channel.time, i) <= endS);
          expect(Math.max(...view.high)).toBe(Math.max(...inside));
          expect(Math.min(...view.low)).toBe(Math.min(...inside));
          const widthS = (endS - startS) / buckets;
          view.timesS.forEach((timeS, k) => {
            const own = values.filter((_, i) => {
              const at = timeAt(channel.time, i);
              return at >= timeS - widthS / 2 - 1e-9 && at < timeS + widthS / 2 + 1e-9;
            });
            expect(view.low[k]).toBeGreaterThanOrEqual(Math.min(...own));
            expect(view.high[k]).toBeLessThanOrEqual(Math.max(...own));
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('leaves buckets without samples out, so that a gap stays a gap', () => {
    const timesS = Float64Array.from({ length: 2000 }, (_, i) => (i < 1000 ? i : i + 5000) / 1000);
    const gapped = channelOf(
      Float32Array.from(timesS, (t) => t % 1),
      { kind: 'listed', timesS },
    );
    const view = viewOf(gapped, buildPyramid(gapped.values), 0, 7, 700);
    expect(view.timesS.length).toBe(200);
    expect(view.gapS).toBeLessThan(5);
  });

  it('leaves missing values out', () => {
    const holes = values.map((value, i) => (i % 3 === 0 ? Number.NaN : value));
    const own = channelOf(holes, regular(holes.length));
    const view = viewOf(own, buildPyramid(holes), 0, 0.1, 1000);
    expect(view.low.every((value) => !Number.isNaN(value))).toBe(true);
    expect(viewOf(own, buildPyramid(holes), 0, 10, 50).low.every((value) => Number.isFinite(value))).toBe(true);
  });

  it.each([
    ['reversed', 2, 1],
    ['before the capture', -5, -4],
    ['not a number', Number.NaN, 1],
  ])('gives at most an edge for a stretch that is %s', (_, startS, endS) => {
    expect(viewOf(channel, pyramid, startS, endS, 100).timesS.length).toBeLessThanOrEqual(1);
  });

  it('holds nothing for a channel without samples', () => {
    const empty = channelOf(new Float32Array(0), regular(0));
    expect(drawerOf(empty)(0, 10, 100).timesS).toHaveLength(0);
    expect(sampleCount(empty.time)).toBe(0);
  });

  it('asks for steps where the instrument holds its values', () => {
    const held = Float32Array.from({ length: 1000 }, (_, i) => Math.sin(Math.floor(i / 5) * 2.3));
    expect(viewOf(channelOf(held, regular(1000)), buildPyramid(held), 0, 1, 2000).steps).toBe(true);
    expect(viewOf(channel, pyramid, 0, 1, 2000).steps).toBe(false);
  });

  it('draws through one pyramid for all stretches', () => {
    const draw = drawerOf(channel);
    expect(draw(0, 10, 200)).toEqual(viewOf(channel, pyramid, 0, 10, 200));
    expect(draw(3, 4, 10)).toEqual(viewOf(channel, pyramid, 3, 4, 10));
  });
});
