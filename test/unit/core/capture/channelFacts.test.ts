import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { channelFacts } from '../../../../core/capture/channelFacts.ts';
import type { TimeBase } from '../../../../core/capture/timeBase.ts';

const at10Hz = (length: number): TimeBase => ({ kind: 'regular', startS: 0, stepS: 0.1, length });

describe('facts of a channel', () => {
  it('counts finite samples and their range, and shows 4-byte values as the decimals they stand for', () => {
    const facts = channelFacts(at10Hz(4), Float32Array.of(0.1, Number.NaN, 0.94, 0.45));
    expect(facts).toMatchObject({ finite: 3, min: 0.1, max: 0.94 });
  });

  it('has only zeros for a channel without values', () => {
    const zeros = { finite: 0, min: 0, max: 0, medianRateHz: 0, jitterS: 0, renewalRateHz: 0, resolution: 0 };
    expect(channelFacts(at10Hz(2), Float32Array.of(Number.NaN, Number.NaN))).toEqual(zeros);
    expect(channelFacts(at10Hz(0), new Float64Array(0))).toEqual(zeros);
  });

  it('measures rate and jitter of irregular times', () => {
    const timesS = Float64Array.from({ length: 201 }, (_, i) => i * 0.25 + (i % 2 === 0 ? 0 : 0.02));
    const { medianRateHz, jitterS } = channelFacts({ kind: 'listed', timesS }, new Float64Array(201).fill(1));
    // Intervals are 0.27 and 0.23 in turn.
    expect([1 / 0.27, 1 / 0.23]).toContainEqual(expect.closeTo(medianRateHz, 6));
    expect(jitterS).toBeCloseTo(0.02, 9);
  });

  it.each([0.005, 0.001, 0.78125, 1, 0.25])('finds a resolution of %f in 4-byte and in 8-byte values', (step) => {
    const wave = Array.from({ length: 3000 }, (_, i) => Math.round((40 * Math.sin(i / 17) + 40) / 1) * step);
    expect(channelFacts(at10Hz(3000), Float64Array.from(wave)).resolution).toBeCloseTo(step, 9);
    expect(channelFacts(at10Hz(3000), Float32Array.from(wave)).resolution).toBeCloseTo(step, 5);
  });

  it('sees that an instrument holds values, whatever the number of rows it holds them for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 0, max: 999 }), (rows, seed) => {
        const values = Float32Array.from(
          { length: 2400 },
          (_, i) => Math.sin((Math.floor(i / rows) + seed) * 12.9898) * 0.4 + 0.45,
        );
        const { renewalRateHz } = channelFacts(at10Hz(2400), values);
        expect(renewalRateHz).toBeCloseTo(10 / rows, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('does not take a slow channel for a held one: it moves by its smallest step only', () => {
    const coolant = Float32Array.from({ length: 6000 }, (_, i) => 60 + Math.floor(i / 200));
    expect(channelFacts(at10Hz(6000), coolant).renewalRateHz).toBe(10);
  });

  it('has a renewal rate of 0 for a channel that never changes', () => {
    expect(channelFacts(at10Hz(500), new Float32Array(500).fill(0.45))).toMatchObject({
      renewalRateHz: 0,
      resolution: 0,
    });
  });

  it('looks further where the middle of a long capture stands still', () => {
    const values = new Float64Array(100_000);
    for (let i = 0; i < 1000; i++) values[i] = i % 2;
    expect(channelFacts(at10Hz(100_000), values).resolution).toBe(1);
  });

  it('takes a range that is known already for what it is', () => {
    const range = { finite: 2, min: 1, max: 5 };
    expect(channelFacts(at10Hz(2), Float64Array.of(1, 5), range)).toMatchObject(range);
  });
});
