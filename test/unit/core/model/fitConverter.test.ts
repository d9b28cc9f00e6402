import { describe, expect, it } from 'vitest';
import type { Capture } from '../../../../core/capture/capture.ts';
import type { FitData } from '../../../../core/model/fit.ts';
import { fitConverter } from '../../../../core/model/fitConverter.ts';
import { fittedDrive, holdOf, without } from '../../../support/fittedDrive.ts';

function fitted(data: FitData) {
  const { fit, missing } = fitConverter(data);
  if (!fit) throw new Error(missing);
  return fit;
}

describe('the fit of a steady window', () => {
  it('tells a converter that stores from one that does not', () => {
    const good = fitted(holdOf(fittedDrive(1.1, 20).capture));
    const dead = fitted(holdOf(fittedDrive(0.03, 20).capture));
    expect(good.logLikelihoodGood).toBeGreaterThan(good.logLikelihoodDead + 2);
    // A sluggish converter that stores explains much of the same trace, so one hold alone says less of a dead one.
    expect(dead.logLikelihoodDead).toBeGreaterThan(dead.logLikelihoodGood + 1);
    expect(good.capacityFor2L).toBeGreaterThan(5 * dead.capacityFor2L);
  });

  it.each([1, 2, 3])('does not take a sluggish converter that stores for a dead one (seed %i)', (seed) => {
    const { capture } = fittedDrive(0.4, 20, seed, { storeRate: 80, releaseRate: 30 });
    const { logLikelihoodGood, logLikelihoodDead } = fitted(holdOf(capture));
    expect(logLikelihoodGood).toBeGreaterThan(logLikelihoodDead);
  });

  it('says that a trace that follows at once leaves the capacity open below', () => {
    const { bound, intervalG } = fitted(holdOf(fittedDrive(0.01, 20).capture));
    expect(bound).toBe('upperOnly');
    expect(intervalG?.[0]).toBeNull();
    // Below what any fresh converter stores, 1 to 2 g; more than that one hold does not tell.
    expect(intervalG?.[1]).toBeLessThan(1);
  });

  it('says in seconds what one swing fills: grams over w, air flow and height of the swing', () => {
    const fit = fitted(holdOf(fittedDrive(0.3, 20).capture));
    expect(fit.swingFrom).toBe('trims');
    expect(fit.capacityS).toBeCloseTo((fit.capacityG ?? 0) / (0.2314 * fit.airGS * fit.swing), 9);
  });

  it('draws ghosts: as fitted near the record, a good one calm, a dead one following', () => {
    const { capture } = fittedDrive(0.02, 20);
    const { ghosts, explained } = fitted(holdOf(capture));
    if (!ghosts) throw new Error('There are no ghosts.');
    const swing = (volts: Float64Array) => Math.max(...volts.slice(200)) - Math.min(...volts.slice(200));
    expect(explained).toBeGreaterThan(0.5);
    expect(swing(ghosts.good)).toBeLessThan(0.5 * swing(ghosts.dead));
    expect(ghosts.timesS[0]).toBeCloseTo(8, 1);
    expect(new Set([ghosts.timesS, ghosts.fitted, ghosts.good, ghosts.dead].map(({ length }) => length)).size).toBe(1);
  });

  it.each([1.5, 3])('works on a data list polled at %f rows a second, by spread alone', (hz) => {
    const good = fitted(holdOf(fittedDrive(1.1, hz).capture));
    const dead = fitted(holdOf(fittedDrive(0.02, hz).capture));
    expect(good.basis).toBe('spread');
    expect(good.ghosts).toBeNull();
    expect(good.logLikelihoodGood).toBeGreaterThan(good.logLikelihoodDead);
    expect(dead.logLikelihoodDead).toBeGreaterThan(dead.logLikelihoodGood);
  });

  it('gives no grams where no air flow was recorded, and a capacity as for two litres all the same', () => {
    const fit = fitted(holdOf(without(fittedDrive(0.3, 20).capture, 'maf')));
    expect(fit.capacityG).toBeNull();
    expect(fit.intervalG).toBeNull();
    expect(fit.capacityFor2L).toBeGreaterThan(0.05);
  });
});

describe('the fit of a fuel cut', () => {
  it.each([0.2, 0.3, 0.6, 1.2])('measures %f g within a factor of 1.6', (capacityG) => {
    const { capture, trueG } = fittedDrive(capacityG, 20);
    const fit = fitted(holdOf(capture, 'fuelCut', 68, 72));
    expect(fit.kind).toBe('airPull');
    expect(Math.abs(Math.log((fit.capacityG ?? 0) / trueG))).toBeLessThan(Math.log(1.6));
  });
});

describe('what cannot be fitted', () => {
  const { capture } = fittedDrive(0.3, 20);

  it.each([
    ['upstreamO2', 'The front oxygen sensor was not recorded.'],
    ['downstreamO2', 'The rear oxygen sensor was not recorded.'],
  ])('without %s', (role, words) => {
    expect(fitConverter(holdOf(without(capture, role)))).toEqual({ fit: null, missing: words });
  });

  it('an empty, a reversed and a far-off window', () => {
    for (const [startS, endS] of [
      [20, 20],
      [30, 20],
      [1e6, 2e6],
      [-50, -10],
    ] as const) {
      const { fit, missing } = fitConverter(holdOf(capture, 'hold', startS, endS));
      expect(fit).toBeNull();
      expect(missing).toMatch(/\.$/);
    }
  });

  it('a front signal that does not swing', () => {
    const flat: Capture = {
      ...capture,
      channels: capture.channels.map((channel) =>
        channel.role === 'upstreamO2' ? { ...channel, values: channel.values.map(() => 0.45) } : channel,
      ),
    };
    expect(fitConverter(holdOf(flat)).missing).toMatch(/swung/);
  });

  it('nothing but missing values', () => {
    const empty: Capture = {
      ...capture,
      channels: capture.channels.map((channel) => ({ ...channel, values: channel.values.map(() => Number.NaN) })),
    };
    expect(fitConverter(holdOf(empty)).fit).toBeNull();
  });
});
