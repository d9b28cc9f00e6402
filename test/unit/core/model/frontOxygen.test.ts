import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oxygenFromLambda, oxygenFromVolts } from '../../../../core/model/frontOxygen.ts';

const PLATEAUS = { leanV: 0.1, richV: 0.8 };

describe('excess oxygen from a switching sensor', () => {
  it('is the half height at the plateaus and nothing in the middle', () => {
    expect(oxygenFromVolts(0.1, PLATEAUS, 0.03)).toBeCloseTo(0.03, 12);
    expect(oxygenFromVolts(0.45, PLATEAUS, 0.03)).toBeCloseTo(0, 12);
    expect(oxygenFromVolts(0.8, PLATEAUS, 0.03)).toBeCloseTo(-0.03, 12);
  });

  it('goes on after Nernst beyond them: e times as rich for each 41 mV', () => {
    expect(oxygenFromVolts(0.8 + 0.03 + 0.041, PLATEAUS, 0.02)).toBeCloseTo(-0.02 * Math.E, 6);
  });

  it('never rises with the voltage, and stays within what an engine runs on', () => {
    const volts = fc.double({ min: -0.2, max: 1.3, noNaN: true });
    fc.assert(
      fc.property(volts, volts, fc.double({ min: 0.004, max: 0.05, noNaN: true }), (a, b, half) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(oxygenFromVolts(high, PLATEAUS, half)).toBeLessThanOrEqual(oxygenFromVolts(low, PLATEAUS, half) + 1e-12);
        expect(Math.abs(oxygenFromVolts(a, PLATEAUS, half))).toBeLessThanOrEqual(0.09);
      }),
    );
  });
});

describe('excess oxygen from lambda', () => {
  it('is 1 - 1/lambda, and air at the end of the scale', () => {
    expect(oxygenFromLambda(1)).toBe(0);
    expect(oxygenFromLambda(1.05)).toBeCloseTo(0.047619, 6);
    expect(oxygenFromLambda(1.999)).toBe(1);
  });
});
