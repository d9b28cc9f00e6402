import { describe, expect, it } from 'vitest';
import {
  CAPACITY_GRID_G,
  DELAY_GRID_S,
  LAG_GRID_S,
  RATE_GRID,
  TABLE_LENGTH,
  tableIndex,
} from '../../../../core/model/capacityGrid.ts';
import {
  addTables,
  bestPassage,
  estimateFrom,
  logLikelihoods,
  profileOf,
  widened,
} from '../../../../core/model/profile.ts';

/** A table that falls off as a parabola in the logarithm of the capacity around one of them. */
function tableAround(capacityG: number, width: number): Float64Array {
  const table = new Float64Array(TABLE_LENGTH);
  CAPACITY_GRID_G.forEach((grams, capacity) => {
    const height = -0.5 * (Math.log(grams / capacityG) / width) ** 2;
    LAG_GRID_S.forEach((_lag, lag) => {
      DELAY_GRID_S.forEach((_delay, delay) => {
        RATE_GRID.forEach((_rate, rate) => {
          table[tableIndex(rate, capacity, lag, delay)] = height;
        });
      });
    });
  });
  return table;
}

describe('a profile of capacities', () => {
  it('finds the capacity a table is about, between two steps of the grid, and twice its width on either side', () => {
    const { capacityG, interval } = estimateFrom(profileOf(tableAround(0.27, 0.5)), 0.01);
    expect(capacityG).toBeCloseTo(0.27, 2);
    expect(Math.log((interval[1] ?? 0) / (interval[0] ?? 1))).toBeCloseTo(2 * 1.96 * 0.5, 0);
  });

  it('grows wider by what is not known', () => {
    const profile = profileOf(tableAround(0.27, 0.5));
    const width = (unknown: number) => {
      const { interval } = estimateFrom(profile, unknown);
      return Math.log((interval[1] ?? 0) / (interval[0] ?? 1));
    };
    expect(width(0.6)).toBeGreaterThan(width(0.2));
  });

  it('is open at both ends for a table that says nothing', () => {
    expect(estimateFrom(profileOf(new Float64Array(TABLE_LENGTH)), 0.2).interval).toEqual([null, null]);
  });

  it('is open at the end that cannot be told', () => {
    expect(estimateFrom(profileOf(tableAround(0.001, 0.5)), 0.2).interval[0]).toBeNull();
    expect(estimateFrom(profileOf(tableAround(20, 0.5)), 0.2).interval[1]).toBeNull();
  });

  it('draws together when two windows agree', () => {
    const one = tableAround(0.5, 0.6);
    const alone = estimateFrom(profileOf(one), 0.01).interval;
    const both = estimateFrom(
      profileOf(
        addTables([
          { table: one, weight: 1 },
          { table: one, weight: 1 },
        ]),
      ),
      0.01,
    ).interval;
    expect(both[0]).toBeGreaterThan(alone[0] ?? 0);
    expect(both[1]).toBeLessThan(alone[1] ?? 0);
  });

  it('takes the most usual lag and delay where the table prefers none', () => {
    const { lagS, delayS } = bestPassage(new Float64Array(TABLE_LENGTH), 5);
    expect(lagS).toBeCloseTo(0.22, 1);
    expect(delayS).toBeCloseTo(0.15, 1);
  });
});

describe('a profile widened by what is not known', () => {
  const peaked = profileOf(tableAround(0.27, 0.2));

  it('stays where nothing is told, and comes nowhere above the best', () => {
    const flat = widened(profileOf(new Float64Array(TABLE_LENGTH)), 0.4);
    for (const value of flat) expect(value).toBeCloseTo(1, 9);
    for (const value of widened(peaked, 0.4)) expect(value).toBeLessThanOrEqual(1);
  });

  it('takes the deviations together as independent ones: 0.4 and 0.3 make 0.5', () => {
    const nearest = CAPACITY_GRID_G.findIndex((grams) => grams > 0.27);
    const curve = profileOf(tableAround(CAPACITY_GRID_G[nearest] ?? 1, 0.4));
    const after = widened(curve, 0.3);
    const fall = Math.log((after[nearest] ?? 0) / (after[nearest + 2] ?? 1));
    expect(fall).toBeCloseTo(0.5 * ((2 * Math.log(1.42)) / 0.5) ** 2, 1);
  });
});

describe('likelihoods from misses', () => {
  const STEADY = { kind: 'steady', cycles: 30, airRecorded: true, values: 400 } as const;
  const CUT = { kind: 'airPull', cycles: 0, airRecorded: true, values: 400 } as const;

  const misses = (left: number[], waves: number[]) => ({
    left: Float64Array.from(left),
    waves: Float64Array.from(waves),
    recorded: 0.01,
  });

  it('count a window for as many pieces as its swings allow', () => {
    const difference = (cycles: number) => {
      const table = logLikelihoods(misses([0.01, 0.04], [0.01]), { ...STEADY, cycles });
      return (table[0] ?? 0) - (table[1] ?? 0);
    };
    expect(difference(3)).toBeGreaterThan(0);
    expect(difference(18) / difference(3)).toBeCloseTo(6, 6);
    expect(difference(60)).toBeGreaterThan(difference(18));
    expect(difference(600)).toBeCloseTo(difference(60), 9);
  });

  it('count the size of the waves in steady windows, whenever they come, alike for every delay', () => {
    const delays = DELAY_GRID_S.length;
    const even = misses(
      Array.from({ length: 3 * delays }, () => 0.01),
      [0.01, 0.0001, 1],
    );
    const steady = logLikelihoods(even, { ...STEADY, cycles: 30 });
    const at = (lag: number) => steady[lag * delays] ?? 0;
    expect(at(0)).toBeGreaterThan(at(1) + 5);
    expect(at(0)).toBeGreaterThan(at(2) + 5);
    expect(steady[delays - 1]).toBe(at(0));
    const cut = logLikelihoods(even, CUT);
    expect(new Set(cut).size).toBe(1);
  });

  it('count a fuel cut for less where a slow instrument brought few values of it, or no air was recorded', () => {
    const difference = (weight: { values?: number; airRecorded?: boolean }) => {
      const table = logLikelihoods(misses([0.01, 0.04], [0.01]), { ...CUT, ...weight });
      return (table[0] ?? 0) - (table[1] ?? 0);
    };
    expect(difference({ values: 20 })).toBeLessThan(difference({ values: 50 }));
    expect(difference({ airRecorded: false })).toBeLessThan(difference({}));
  });

  it('do not fall apart over a perfect fit', () => {
    const [likelihood] = logLikelihoods({ ...misses([0], [0]), recorded: 0 }, CUT);
    expect(Number.isFinite(likelihood)).toBe(true);
  });
});
