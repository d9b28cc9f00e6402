import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../../core/simulation/random.ts';
import { createWander } from '../../../../core/simulation/wander.ts';
import { moments } from '../../../../core/statistics/moments.ts';

const draws = (count: number, draw: () => number) => Float64Array.from({ length: count }, draw);

describe('a random stream', () => {
  it('is a function of its seed', () => {
    const first = draws(50, createRandom(7).next);
    expect(draws(50, createRandom(7).next)).toEqual(first);
    expect(draws(50, createRandom(8).next)).not.toEqual(first);
  });

  it('gives forks that do not depend on what was drawn before', () => {
    const used = createRandom(7);
    used.gauss();
    expect(used.fork(3).next()).toBe(createRandom(7).fork(3).next());
    expect(used.fork(3).next()).not.toBe(used.fork(4).next());
  });

  it('draws normal deviates with mean 0 and deviation 1, within four standard errors', () => {
    const { mean, deviation } = moments(draws(20_000, createRandom(11).gauss));
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(20_000));
    expect(Math.abs(deviation - 1)).toBeLessThan(4 / Math.sqrt(2 * 20_000));
  });

  it('draws evenly in the logarithm between two ends', () => {
    const random = createRandom(12);
    const values = draws(4000, () => random.logBetween(0.01, 100));
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0.01);
    expect(Math.max(...values)).toBeLessThan(100);
    expect(values.filter((value) => value < 1).length / 4000).toBeCloseTo(0.5, 1);
  });

  it('refuses to pick from nothing', () => {
    expect(() => createRandom(1).pick([])).toThrow('Nothing to pick from');
  });
});

describe('a slow wander', () => {
  it('keeps its deviation and forgets in its own time', () => {
    const step = createWander(createRandom(5), 2, 10, 1);
    const values = draws(50_000, step);
    expect(moments(values).deviation).toBeCloseTo(2, 0);
    let product = 0;
    for (let i = 10; i < values.length; i++) product += (values[i] ?? 0) * (values[i - 10] ?? 0);
    expect(product / (values.length - 10) / 4).toBeCloseTo(Math.exp(-1), 1);
  });
});
