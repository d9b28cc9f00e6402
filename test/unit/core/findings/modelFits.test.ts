import { describe, expect, it } from 'vitest';
import { pool } from '../../../../core/findings/evidence.ts';
import { REASON_RULES } from '../../../../core/findings/reasons/index.ts';
import type { CaptureFit } from '../../../../core/model/fit.ts';

const FIT: CaptureFit = {
  capacityS: 1,
  intervalS: [0.5, 2],
  capacityG: null,
  intervalG: null,
  capacityFor2L: 0.214,
  intervalFor2L: [0.1, 0.5],
  bound: 'both',
  airGS: 10,
  airRecorded: false,
  swing: 0.025,
  swingFrom: 'usual',
  profile: { capacityG: new Float64Array(0), logLikelihood: new Float64Array(0) },
  // A likelihood 1/40 and one 1/3 of the best.
  logLikelihoodDead: -Math.log(40),
  logLikelihoodGood: -Math.log(3),
  steady: 1,
  airPulls: 0,
};

function seen(fit: Partial<CaptureFit> | null, wideband = false): Record<string, { value: number; detail: string }> {
  const evidence = { ...pool([], 1, []), wideband, fit: () => (fit === null ? null : { ...FIT, ...fit }) };
  return Object.fromEntries(
    REASON_RULES.flatMap((rule) => {
      const found = /^(dead|good)/.test(rule.id) ? rule.look(evidence) : null;
      return found === null ? [] : [[rule.id, found]];
    }),
  );
}

describe('what the fitted model says', () => {
  it('is told of a dead and of a good converter, each as so many times worse than the best fit', () => {
    const { deadFits, goodMisfits, ...rest } = seen({});
    expect(rest).toEqual({});
    expect(deadFits?.detail).toBe(
      'The fitted model stores 0.21 g of oxygen, as for a two-litre engine; 0.10 to 0.50 g would fit too (95 %). A converter that stores next to nothing explains the rear trace 40 times worse than the best fit.',
    );
    expect(goodMisfits?.detail).toBe(
      'By the fitted model a good converter explains the rear trace 3.0 times worse than the best fit.',
    );
  });

  it('rises with what speaks against the converter', () => {
    expect(seen({ logLikelihoodDead: -1 }).deadFits?.value).toBeGreaterThan(
      seen({ logLikelihoodDead: -5 }).deadFits?.value ?? 0,
    );
    expect(seen({ logLikelihoodGood: -5 }).goodMisfits?.value).toBeGreaterThan(
      seen({ logLikelihoodGood: -1 }).goodMisfits?.value ?? 0,
    );
  });

  it('has names of its own behind a wideband front sensor', () => {
    expect(Object.keys(seen({}, true)).sort()).toEqual(['deadFitsByLambda', 'goodMisfitsByLambda']);
  });

  it.each([
    [0, 'as well as any.'],
    [-1, '2.7 times worse than the best fit.'],
    [-5000, 'more than 1000 times worse than the best fit.'],
  ])('says of a logarithm of likelihood of %f: %s', (logLikelihoodGood, words) => {
    expect(seen({ logLikelihoodGood }).goodMisfits?.detail).toBe(
      `By the fitted model a good converter explains the rear trace ${words}`,
    );
  });

  it('is nothing where nothing could be fitted, or any storage fits', () => {
    expect(seen(null)).toEqual({});
    expect(seen({ bound: 'none' })).toEqual({});
  });
});
