// Two banks that swing each by its own control, with their rear channels in place and exchanged.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sensorsInPlace } from '../../../../core/conditions/sensorsInPlace.ts';
import { cutWindow } from '../../../../core/measures/windowData.ts';
import { captureOf, type DrawnChannel } from '../../../support/drawTrace.ts';
import { pairAt } from '../../../support/drivenPair.ts';

const SECONDS = 60;

/** What is said of each bank, where `rearOf` names the bank whose rear trace is recorded under 1 and under 2. */
function inPlace(seed: number, through: readonly [number, number], rearOf: readonly [1 | 2, 1 | 2], rateHz = 10) {
  const banks = through.map((share, k) =>
    pairAt({ seed: seed + 7 * k, seconds: SECONDS, hz: k === 0 ? 1.1 : 1.3, through: share, lagS: 0.25 }),
  );
  const channels = ([1, 2] as const).flatMap((bank): DrawnChannel[] => {
    const front = banks[bank - 1];
    const rear = banks[(rearOf[bank - 1] ?? bank) - 1];
    const shared = { bank, rateHz, seconds: SECONDS } as const;
    return front && rear
      ? [
          { ...shared, role: 'upstreamO2', sensor: 1, values: front.front },
          { ...shared, role: 'downstreamO2', sensor: 2, values: rear.rear },
        ]
      : [];
  });
  const capture = captureOf(channels);
  return ([1, 2] as const).map((bank) => {
    const data = cutWindow(capture, { startS: 0, endS: SECONDS, bank, kind: 'hold', origin: 'byHand' }, bank);
    return sensorsInPlace.judge({ ...data, measures: new Map(), troubleCodes: [] });
  });
}

const anySeed = fc.integer({ min: 1, max: 1e6 });

test('rear channels exchanged between a converter that lets through and one that stores are recognised on both banks', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      for (const found of inPlace(seed, [0.7, 0], [2, 1])) expect(found.met).toBe(false);
    }),
    { numRuns: 15 },
  );
  expect(inPlace(3, [0.7, 0], [2, 1])[1]?.detail).toContain('The rear trace of this bank follows the front one across');
});

test('those in place are left alone, whatever the converters let through', () => {
  const share = fc.double({ min: 0, max: 0.9, noNaN: true });
  fc.assert(
    fc.property(anySeed, share, share, (seed, one, two) => {
      for (const found of inPlace(seed, [one, two], [1, 2])) expect(found.met).not.toBe(false);
    }),
    { numRuns: 25 },
  );
});

test('an instrument of two values a second cannot tell, and does not', () => {
  for (const found of inPlace(5, [0.7, 0], [2, 1], 2)) expect(found.met).toBe(true);
});

test('two wideband banks of which one stays rich and the other lean are steered by each other', () => {
  const judged = (...lambdas: readonly number[]) => {
    const channels = lambdas.map((lambda, k): DrawnChannel => {
      const values = (t: number) => lambda + 0.005 * Math.sin(5 * t);
      return { role: 'upstreamLambda', bank: k === 0 ? 1 : 2, rateHz: 5, seconds: SECONDS, values };
    });
    const data = cutWindow(
      captureOf(channels),
      { startS: 0, endS: SECONDS, bank: 1, kind: 'hold', origin: 'byHand' },
      1,
    );
    return sensorsInPlace.judge({ ...data, measures: new Map(), troubleCodes: [] });
  };
  expect(judged(0.77, 1.4).met).toBe(false);
  expect(judged(0.77, 1.4).detail).toContain('lambda 0.77 here, 1.40 there');
  // Both rich, or one balanced: a matter of the mixture, and no exchange.
  expect(judged(0.77, 0.8).met).toBeNull();
  expect(judged(0.77, 1).met).toBeNull();
});
