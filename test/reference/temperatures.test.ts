// Temperatures at the converter: worked values with their sources, by the row number of the list of published checks.

import { describe, expect, test } from 'vitest';
import { trueTemperature } from '../../core/thermal/instrument.ts';
import { CLEAN_RISE_K, oxidationRise } from '../../core/thermal/oxidationRise.ts';
import { celsius } from '../../core/thermal/pairOf.ts';
import { readThermal } from '../../core/thermal/readThermal.ts';

describe('heat of what a converter oxidises (NIST Chemistry WebBook values)', () => {
  test.each([
    [600, 33.24, 85.1],
    [700, 34.18, 82.8],
    [800, 35.09, 80.7],
  ])('5.02 1 %% of carbon monoxide at %i K', (_kelvin, heatCapacity, rise) => {
    expect(oxidationRise('carbonMonoxide', 0.01, heatCapacity)).toBeCloseTo(rise, 0);
  });

  test('5.03 1000 ppm of propane or hexane, 1 % of hydrogen', () => {
    expect(Math.abs(oxidationRise('propane', 0.001) - 59.8)).toBeLessThan(0.1);
    expect(Math.abs(oxidationRise('hexane', 0.001) - 113.7)).toBeLessThan(0.1);
    expect(Math.abs(oxidationRise('hydrogen', 0.01) - 70.8)).toBeLessThan(0.1);
  });

  test('5.04 a clean engine leaves some 20 K', () => {
    expect(Math.abs(CLEAN_RISE_K - 19.7)).toBeLessThan(0.1);
  });
});

describe('units', () => {
  test('5.06 °F and K to °C; a difference loses no offset', () => {
    expect(celsius({ value: 290, unit: 'F' })).toBeCloseTo(143.333, 3);
    expect(celsius({ value: 385, unit: 'F' })).toBeCloseTo(196.111, 3);
    expect(celsius({ value: 385, unit: 'F' }) - celsius({ value: 290, unit: 'F' })).toBeCloseTo(52.778, 3);
    expect(celsius({ value: 212, unit: 'F' })).toBe(100);
    expect(celsius({ value: -40, unit: 'F' })).toBe(-40);
    expect(celsius({ value: 273.15, unit: 'K' })).toBe(0);
  });
});

describe('emissivity, total radiation (checks 5.11 to 5.14)', () => {
  test('5.12 shown 300 °C with 0.95 set: true on oxidised and on bright steel', () => {
    expect(trueTemperature(300, 0.95, 0.79)).toBeCloseTo(325.19, 2);
    expect(trueTemperature(300, 0.95, 0.3)).toBeCloseTo(481.66, 2);
  });

  test('5.13 what is shown with 0.95 set on steel of 400 °C is read as 400 °C', () => {
    expect(trueTemperature(370.92, 0.95, 0.79)).toBeCloseTo(400, 1);
    expect(trueTemperature(241.67, 0.95, 0.3)).toBeCloseTo(400, 1);
    expect(trueTemperature(177.25, 0.95, 0.16)).toBeCloseTo(400, 1);
  });

  test('5.14 a setting that is right shows the truth, whatever is around', () => {
    for (const around of [-20, 25, 60]) expect(trueTemperature(312, 0.8, 0.8, around)).toBeCloseTo(312, 9);
  });
});

describe('what a pair says', () => {
  const pair = (inlet: number, outlet: number) =>
    readThermal({
      inletC: celsius({ value: inlet, unit: 'F' }),
      outletC: celsius({ value: outlet, unit: 'F' }),
      bank: 1,
      brick: 1,
      rpm: 2300,
      emissivity: null,
    });

  test('5.05 three sources read the same rise in three ways: no pair weighs more than a little', () => {
    for (let outlet = 150; outlet < 900; outlet += 5)
      expect(Math.abs(pair(400, outlet).weight)).toBeLessThanOrEqual(0.8);
  });

  test('100 °F of rise speaks for a converter at work (common practice, no source)', () => {
    expect(pair(290, 390).weight).toBeLessThan(-0.5);
  });

  test.each([
    [500, 384],
    [345, 220],
  ])('%i °F in and %i °F out speaks against one (common practice, no source)', (inlet, outlet) => {
    expect(pair(inlet, outlet).weight).toBeGreaterThan(0.5);
    expect(pair(inlet, outlet).reading).toContain('below inlet');
  });

  test('5.05 200 °F of rise is too much fuel, and says nothing for the converter', () => {
    expect(pair(300, 520).weight).toBe(0);
    expect(pair(300, 520).reading).toContain('misfire');
  });

  test('5.15 an infrared reading leaves more open than a contact probe, and the interval holds the rise', () => {
    const contact = pair(400, 450);
    const infrared = readThermal({ ...contact, emissivity: 0.95 });
    const width = ({ riseInterval }: typeof contact) => riseInterval[1] - riseInterval[0];
    expect(width(infrared)).toBeGreaterThan(width(contact));
    expect(infrared.riseInterval[0]).toBeLessThan(infrared.riseC);
  });

  test('words and weight never say the opposite of each other', () => {
    for (const inletC of [40, 95, 150, 300, 500])
      for (let riseC = -150; riseC <= 150; riseC += 1) {
        const { reading, weight } = readThermal({ ...pair(290, 390), inletC, outletC: inletC + riseC });
        if (/at work/.test(reading)) expect(weight, reading).toBeLessThan(0);
        if (/against it;/.test(reading) && /below/.test(reading)) expect(weight, reading).toBeGreaterThan(0);
        if (/tells nothing/.test(reading)) expect(weight, reading).toBe(0);
      }
  });

  test('on a cold exhaust a pair says nothing (common practice, no source)', () => {
    const cold = readThermal({ ...pair(100, 200), rpm: 2300 });
    expect(cold.weight).toBe(0);
    expect(cold.reading).toContain('not hot');
  });

  test('at idle a pair says nothing (common practice, no source)', () => {
    const idle = readThermal({ ...pair(290, 390), rpm: 800 });
    expect(idle.weight).toBe(0);
    expect(idle.reading).toContain('not at a raised speed');
  });
});
