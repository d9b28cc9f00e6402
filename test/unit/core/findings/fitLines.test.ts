import { describe, expect, test } from 'vitest';
import { fitLines, type KnownCase } from '../../../../core/findings/fitLines.ts';
import { seededUniform } from '../../../../core/statistics/seededUniform.ts';

const next = seededUniform(11);
const gauss = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

/** Cases whose truth follows a known line: odds of failure are exp(3 (a - 1)), and b is the same seen with noise. */
const CASES: KnownCase[] = Array.from({ length: 4000 }, () => {
  const a = 1 + gauss();
  const failed = next() < 1 / (1 + Math.exp(-3 * (a - 1)));
  return { failed, features: { a, noisy: a + 2 * gauss(), against: -a, chance: gauss() } };
});
const wish = (...ids: string[]) => ids.map((id) => ({ id, ends: null }));

describe('fitLines', () => {
  test('finds a line that is known', () => {
    const { a } = fitLines(CASES, wish('a'));
    expect(a?.slope).toBeGreaterThan(2.5);
    expect(a?.slope).toBeLessThan(3.5);
    expect(a?.middle).toBeCloseTo(1, 1);
  });

  test('a reason that speaks the wrong way, or of nothing, gets no slope, and none is ever negative', () => {
    const lines = fitLines(CASES, wish('a', 'against', 'chance'));
    expect(lines.against?.slope).toBe(0);
    expect(lines.chance?.slope).toBeLessThan(0.2);
    for (const { slope } of Object.values(lines)) expect(slope).toBeGreaterThanOrEqual(0);
  });

  test('two reasons that see the same share its weight instead of counting it twice', () => {
    const alone = fitLines(CASES, wish('a')).a?.slope ?? 0;
    const both = fitLines(
      CASES.map(({ failed, features }) => ({ failed, features: { ...features, again: features.a ?? 0 } })),
      wish('a', 'again'),
    );
    expect((both.a?.slope ?? 0) + (both.again?.slope ?? 0)).toBeCloseTo(alone, 0);
  });

  test('ends that are given are kept, others are the outer 2 % of what was seen', () => {
    const lines = fitLines(CASES, [
      { id: 'a', ends: { low: 0, high: 2 } },
      { id: 'noisy', ends: null },
    ]);
    expect([lines.a?.low, lines.a?.high]).toEqual([0, 2]);
    expect(lines.noisy?.low).toBeLessThan(-2);
    expect(lines.noisy?.high).toBeGreaterThan(4);
  });

  test('the same cases give the same lines, in any order of the reasons; a reason nobody saw weighs nothing', () => {
    const first = fitLines(CASES, wish('a', 'noisy'));
    const second = fitLines(CASES, wish('noisy', 'a'));
    expect(second.a).toEqual(first.a);
    expect(fitLines(CASES, wish('never')).never).toEqual({ middle: 0, slope: 0, low: 0, high: 0 });
  });
});
