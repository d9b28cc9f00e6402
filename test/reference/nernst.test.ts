// The Nernst voltage of the simulated sensor and of the model, against values computed with an independent library from the
// CODATA constants (test/reference/values/nernst.csv); row numbers of the list of published checks stand in the names.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LEAN_FOLD_V, RICH_FOLD_V } from '../../core/model/frontOxygen.ts';
import { FARADAY_CONSTANT, GAS_CONSTANT, nernstVolts, oxygenPressure } from '../../core/simulation/nernst.ts';
import { zirconiaVolts } from '../../core/simulation/zirconia.ts';

const ROWS = readFileSync(new URL('values/nernst.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number));

describe('Nernst equation, CODATA 2018 constants', () => {
  test('4.01 the constants are products of exact ones', () => {
    expect(GAS_CONSTANT).toBeCloseTo(6.02214076e23 * 1.380649e-23, 12);
    expect(FARADAY_CONSTANT).toBeCloseTo(6.02214076e23 * 1.602176634e-19, 8);
  });

  test('4.02 per decade of pressure and kelvin', () => {
    expect(GAS_CONSTANT / (4 * FARADAY_CONSTANT)).toBeCloseTo(2.15433332e-5, 12);
    expect((GAS_CONSTANT * Math.LN10) / (4 * FARADAY_CONSTANT)).toBeCloseTo(4.96053578e-5, 12);
  });

  test.each([
    [600, 43.313],
    [700, 48.273],
    [800, 53.234],
  ])('4.03 a decade at %i °C', (celsius, millivolts) => {
    expect(Math.abs(1000 * nernstVolts(celsius, 1, 0.1) - millivolts)).toBeLessThan(0.001);
  });

  test.each(ROWS)(
    '4.04 %f °C, %f against %f atm',
    (celsius = 0, reference = 1, exhaust = 1, millivolts = 0, within = 0) => {
      expect(Math.abs(1000 * nernstVolts(celsius, reference, exhaust) - millivolts)).toBeLessThan(within);
    },
  );

  test('4.05 equal pressures give no voltage', () => {
    expect(nernstVolts(700, 0.2095, 0.2095)).toBe(0);
  });

  test('4.06 oxygen left at 0.45 V', () => {
    expect(oxygenPressure(600, 0.2095, 0.45) / 8.544e-12).toBeCloseTo(1, 3);
    expect(oxygenPressure(800, 0.2095, 0.45) / 7.378e-10).toBeCloseTo(1, 3);
  });

  test('4.07 another printed form agrees to 6e-5', () => {
    const millivolts = 450;
    const printed = 0.209 * Math.exp((-46.421 * millivolts) / 873.15);
    expect(oxygenPressure(600, 0.209, millivolts / 1000) / printed).toBeCloseTo(1, 2);
  });

  test('the folds of the model belong to 680 °C', () => {
    const quarter = (GAS_CONSTANT * (680 + 273.15)) / (4 * FARADAY_CONSTANT);
    expect(LEAN_FOLD_V).toBeCloseTo(quarter, 3);
    expect(RICH_FOLD_V).toBeCloseTo(2 * quarter, 3);
  });
});

describe('the simulated zirconia sensor', () => {
  test('4.11 is below 0.1 V or near it when lean, above 0.8 V when rich, and falls all the way', () => {
    expect(zirconiaVolts(0.02, 700, 0.002)).toBeLessThan(0.11);
    expect(zirconiaVolts(-0.02, 700, 0.002)).toBeGreaterThan(0.8);
    let before = Number.POSITIVE_INFINITY;
    for (let x = -0.1; x <= 1; x += 0.001) {
      const volts = zirconiaVolts(x, 700, 0.002);
      expect(volts).toBeLessThanOrEqual(before + 1e-9);
      before = volts;
    }
  });

  test('4.05 shows next to nothing in plain air', () => {
    expect(Math.abs(zirconiaVolts(1, 700, 0.002))).toBeLessThan(0.001);
  });
});
