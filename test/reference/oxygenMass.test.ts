// Oxygen carried into a converter, worked by hand; row numbers of the list of published checks stand in the names.

import { describe, expect, test } from 'vitest';
import { AIR_OXYGEN_MASS_SHARE, excessOxygen, oxygenMass } from '../../core/model/oxygenFlow.ts';

/** The mass share that the usual patents print; the product uses the one that follows from the volume share. */
const PATENT_SHARE = 0.23;

describe('oxygen mass w (1 - 1/lambda) air t', () => {
  test('the mass share of oxygen in air follows from volume share and molar masses', () => {
    expect(AIR_OXYGEN_MASS_SHARE).toBeCloseTo((0.20946 * 31.998) / 28.9647, 5);
  });

  test.each([
    ['3.20', 1.05, 10, 2, 0.219048],
    ['3.21', 1.03, 10, 3, 0.200971],
    ['3.22', 0.95, 10, 2, -0.242105],
    ['3.23', 0.97, 12, 1.5, -0.128041],
    ['3.25 fuel cut', Number.POSITIVE_INFINITY, 5, 2, 2.3],
  ])('%s lambda %f, %f g/s, %f s', (_row, lambda, air, seconds, grams) => {
    expect(Math.abs(oxygenMass(lambda, air, seconds, PATENT_SHARE) - grams)).toBeLessThan(1e-6);
  });

  test('3.20 with the mass share of the product', () => {
    expect(oxygenMass(1.05, 10, 2)).toBeCloseTo(0.220381, 6);
  });

  test('3.24 the same by fuel mass, stoichiometric ratio 14.7', () => {
    const airToFuel = 14.7 * 1.05;
    const fuel = 10 / airToFuel;
    expect(PATENT_SHARE * (airToFuel - 14.7) * fuel * 2).toBeCloseTo(oxygenMass(1.05, 10, 2, PATENT_SHARE), 12);
  });

  test.each([
    ['3.26 square', 'square', 33.495, -35.567],
    ['3.27 sine', 'sine', 21.459, -22.494],
  ])('%s, lambda 1 ± 0.03, 1 Hz, 10 g/s: one half wave', (_name, form, leanMilligrams, richMilligrams) => {
    expect(Math.abs(halfWave(form, 1) - leanMilligrams)).toBeLessThan(1e-3);
    expect(Math.abs(halfWave(form, -1) - richMilligrams)).toBeLessThan(1e-3);
  });

  test('a lambda that no gas has gives no number', () => {
    expect(excessOxygen(0)).toBeNaN();
    expect(excessOxygen(-1)).toBeNaN();
  });
});

/** Milligrams in one half wave, by the midpoint rule in steps of 5 µs. */
function halfWave(form: string, sign: 1 | -1): number {
  const steps = 100_000;
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const height = form === 'square' ? 1 : Math.sin((Math.PI * (k + 0.5)) / steps);
    sum += oxygenMass(1 + sign * 0.03 * height, 10, 0.5 / steps, PATENT_SHARE);
  }
  return 1000 * sum;
}
