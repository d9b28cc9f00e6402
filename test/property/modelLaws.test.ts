// Laws of the model fit for any capture of its kind.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Capture } from '../../core/capture/capture.ts';
import { fitConverter } from '../../core/model/fitConverter.ts';
import { fittedDrive, holdOf } from '../support/fittedDrive.ts';

function shifted(capture: Capture, byS: number): Capture {
  const channels = capture.channels.map((channel) => {
    const time =
      channel.time.kind === 'listed'
        ? { ...channel.time, timesS: channel.time.timesS.map((timeS) => timeS + byS) }
        : { ...channel.time, startS: channel.time.startS + byS };
    return { ...channel, time };
  });
  return { ...capture, channels, durationS: capture.durationS + byS };
}

describe('the model fit', () => {
  test('does not care when the clock began', () => {
    const { capture } = fittedDrive(0.25, 12);
    const here = fitConverter(holdOf(capture)).fit;
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 4000 }), (byS) => {
        const there = fitConverter(holdOf(shifted(capture, byS), 'hold', 8 + byS, 68 + byS)).fit;
        expect(Math.log((there?.capacityFor2L ?? 0) / (here?.capacityFor2L ?? 1))).toBeCloseTo(0, 1);
      }),
      { numRuns: 4 },
    );
  });

  test('gives the same bits for the same capture', () => {
    const { capture } = fittedDrive(0.25, 12);
    expect(fitConverter(holdOf(capture)).fit?.table).toEqual(fitConverter(holdOf({ ...capture })).fit?.table);
  });

  test('never falls with the capacity that was put in, beyond its own uncertainty', () => {
    const said = [0.02, 0.1, 0.4, 1.4].map((grams) => {
      const { capture } = fittedDrive(grams, 12, 5);
      return fitConverter(holdOf(capture, 'fuelCut', 68, 72)).fit?.capacityFor2L ?? 0;
    });
    expect([...said].sort((a, b) => a - b)).toEqual(said);
  });
});
