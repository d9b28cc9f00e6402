import { describe, expect, it } from 'vitest';
import { AIR_OXYGEN_MASS_SHARE } from '../../../../core/model/oxygenFlow.ts';
import { type ConverterParameters, createConverter, lightOff } from '../../../../core/simulation/converter.ts';
import { SOUND_BANK } from '../../../../core/simulation/defaults.ts';

const STEP_S = 0.005;
const AIR = 10;
const HOT_C = 700;

/** A converter whose outlet shows only what passed, so that its mass balance can be read off. */
function converter(capacityG: number): ConverterParameters {
  return { ...SOUND_BANK.converter, capacityG, equilibriumSpan: 0 };
}

/** Feeds lean gas for a while; returns grams that went in and grams that came out. */
function feed(capacityG: number, x: number, seconds: number, startFill: number) {
  const brick = createConverter(converter(capacityG), STEP_S, startFill);
  const grams = (excess: number) => AIR_OXYGEN_MASS_SHARE * excess * AIR * STEP_S;
  let into = 0;
  let out = 0;
  for (let k = 0; k < seconds / STEP_S; k++) {
    into += grams(x);
    out += grams(brick.step(x, AIR, HOT_C));
  }
  return { into, out, filled: brick.filled() };
}

describe('the simulated converter', () => {
  it.each([0.05, 0.4, 1.5])('keeps the mass balance with %f g, filling and emptying', (capacityG) => {
    const lean = feed(capacityG, 0.03, 4, 0.2);
    expect((lean.filled - 0.2) * capacityG).toBeCloseTo(lean.into - lean.out, 9);
    const rich = feed(capacityG, -0.03, 4, 0.9);
    expect((rich.filled - 0.9) * capacityG).toBeCloseTo(rich.into - rich.out, 9);
  });

  it('is filled by a fuel cut, whatever its size (check 3.25)', () => {
    for (const capacityG of [0.05, 0.5, 1]) expect(feed(capacityG, 1, 5, 0.3).filled).toBeGreaterThan(0.98);
  });

  it('lets through what it cannot take: nothing at first, everything in the end', () => {
    const brick = createConverter(converter(0.4), STEP_S, 0);
    const first = brick.step(0.02, AIR, HOT_C);
    for (let k = 0; k < 60 / STEP_S; k++) brick.step(0.02, AIR, HOT_C);
    expect(first).toBeLessThan(0.001);
    expect(brick.step(0.02, AIR, HOT_C)).toBeCloseTo(0.02, 4);
  });

  it('stores, and does not filter: twelve times the wave is not twelve times the answer (SAE 820276, check 3.38)', () => {
    const wave = (k: number) => (k % 200 < 100 ? 0.01 : -0.01);
    const run = (x: (k: number) => number) => {
      const brick = createConverter(converter(0.3), STEP_S, 0.5);
      return Array.from({ length: 2000 }, (_, k) => brick.step(x(k), AIR, HOT_C));
    };
    const small = run(wave);
    const large = run((k) => 12 * wave(k));
    const misfit = large.reduce((sum, value, k) => sum + Math.abs(value - 12 * (small[k] ?? 0)), 0);
    expect(misfit / large.reduce((sum, value) => sum + Math.abs(value), 0)).toBeGreaterThan(0.1);
  });

  it('stores next to nothing while cold (checks 3.30, 3.31)', () => {
    expect(lightOff(SOUND_BANK.converter, 100)).toBeLessThan(0.01);
    expect(lightOff(SOUND_BANK.converter, 600)).toBeGreaterThan(0.95);
    const cold = createConverter(converter(1), STEP_S, 0.5);
    expect(cold.step(0.02, AIR, 80)).toBeCloseTo(0.02, 3);
  });

  it('lets more through at a higher flow', () => {
    const passed = (air: number) => createConverter(converter(0.3), STEP_S, 0.5).step(0.02, air, HOT_C);
    expect(passed(40)).toBeGreaterThan(passed(10));
  });
});
