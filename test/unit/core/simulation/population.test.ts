import { describe, expect, it } from 'vitest';
import { blockerRule } from '../../../../core/findings/blockerRules.ts';
import { CAPACITY_G, CLASSES } from '../../../../core/simulation/population/classes.ts';
import { drawCase } from '../../../../core/simulation/population/drawCase.ts';
import { FAULTS } from '../../../../core/simulation/population/faults/index.ts';
import { planCase } from '../../../../core/simulation/population/planCase.ts';
import { BEYOND, CAR, CONVERTER, draw, EXHAUST, REAR } from '../../../../core/simulation/population/ranges.ts';
import { createRandom } from '../../../../core/simulation/random.ts';

const plans = Array.from({ length: 1500 }, (_, index) => planCase(index, createRandom(1).fork(index)));

describe('the plan of the population', () => {
  it('holds every class, fault and kind of instrument in its proportion', () => {
    for (const kind of CLASSES) expect(plans.filter((plan) => plan.kind === kind).length).toBeGreaterThan(200);
    const faulty = plans.filter(({ fault }) => fault !== null);
    expect(faulty.length / plans.length).toBeCloseTo(0.4, 2);
    for (const { id } of FAULTS) expect(faulty.filter(({ fault }) => fault?.id === id).length).toBeGreaterThan(20);
  });

  it('gives each fault to good and to failed converters, and clean ones to every instrument', () => {
    for (const { id } of FAULTS) {
      const kinds = new Set(plans.filter(({ fault }) => fault?.id === id).map(({ kind }) => kind));
      expect(kinds.size).toBe(CLASSES.length);
    }
    for (const kind of CLASSES) {
      const tiers = new Set(plans.filter((plan) => plan.kind === kind && !plan.fault).map(({ tier }) => tier));
      expect(tiers.size).toBe(5);
    }
  });

  it('names blockers that exist', () => {
    for (const { blockers } of FAULTS) for (const id of blockers) expect(blockerRule(id).id).toBe(id);
  });

  it('has classes that meet and do not overlap', () => {
    expect(CAPACITY_G.failed.high).toBe(CAPACITY_G.gray.low);
    expect(CAPACITY_G.gray.high).toBe(CAPACITY_G.aged.low);
    expect(CAPACITY_G.aged.high).toBe(CAPACITY_G.fresh.low);
  });
});

describe('drawing a parameter', () => {
  it.each([CAR.litres, CONVERTER.lightOffC, EXHAUST.mixingS, REAR.shift])('inside and beyond %o', (range) => {
    const random = createRandom(9);
    const width = range.high - range.low;
    for (let k = 0; k < 300; k++) {
      const inside = draw(range, random, 'inside');
      expect(inside).toBeGreaterThanOrEqual(range.low);
      expect(inside).toBeLessThan(range.high);
      const far = draw(range, random, 'far');
      expect(far <= range.low || far >= range.high).toBe(true);
      expect(far).toBeLessThanOrEqual('log' in range ? range.high * (1 + BEYOND) : range.high + width * BEYOND);
    }
  });
});

describe('a case', () => {
  it('is the same for ever, and another one in the other split', () => {
    const once = drawCase(12, 'test');
    const again = drawCase(12, 'test');
    expect(again.truth).toEqual(once.truth);
    expect(again.capture.channels.map(({ values }) => values)).toEqual(
      once.capture.channels.map(({ values }) => values),
    );
    expect(drawCase(12, 'calibration').truth.capacityG).not.toBe(once.truth.capacityG);
  });

  it('looks like a capture that was read: roles with banks, ascending times, NaN for what is missing', () => {
    const { capture, truth } = drawCase(3, 'test');
    expect(capture.channels.some(({ role, bank }) => role === 'downstreamO2' && bank === truth.bank)).toBe(true);
    for (const { time, values, facts } of capture.channels) {
      if (time.kind !== 'listed') throw new Error('Recorded times are listed.');
      expect(time.timesS).toHaveLength(values.length);
      for (let i = 1; i < values.length; i++)
        expect(time.timesS[i] ?? 0).toBeGreaterThanOrEqual(time.timesS[i - 1] ?? 0);
      expect(values.filter((value) => Number.isFinite(value)).length).toBe(facts.finite);
    }
  });
});
