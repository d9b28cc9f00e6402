import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../../core/capture/channel.ts';
import { seriesOf } from '../../../../core/capture/series.ts';
import { nextSwitch } from '../../../../core/service/nextSwitch.ts';
import { stretchFacts } from '../../../../core/service/stretchFacts.ts';
import { hysteresisCrossings } from '../../../../core/signal/crossings.ts';
import { channelOf } from './serviceBench.ts';

const BAND = { low: 0.3, high: 0.6 };

/** Traces that dwell: long stretches on one side, inside the band, and without values, then a few quick ones. */
const dwells = fc.array(
  fc.tuple(
    fc.constantFrom(0.1, 0.4, 0.5, 0.9, Number.NaN),
    fc.oneof(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 50, max: 400 })),
  ),
  { minLength: 1, maxLength: 12 },
);
const traces = dwells.map((parts) =>
  channelOf(
    'c0',
    parts.flatMap(([volts, count]) => Array<number>(count).fill(volts)),
  ),
);
const moments = fc.double({ min: -5, max: 2000, noNaN: true });

const allSwitches = (channel: Channel) =>
  hysteresisCrossings(seriesOf(channel, Number.NEGATIVE_INFINITY, 1e9), BAND).map(({ timeS }) => timeS);

describe('nextSwitch', () => {
  it('finds, however far it is, the switch that counting the whole channel finds', () => {
    fc.assert(
      fc.property(traces, moments, (channel, fromS) => {
        const switches = allSwitches(channel);
        expect(nextSwitch(channel, BAND, fromS, 1)).toBe(switches.find((timeS) => timeS > fromS) ?? null);
        expect(nextSwitch(channel, BAND, fromS, -1)).toBe(switches.findLast((timeS) => timeS < fromS) ?? null);
      }),
      { numRuns: 500 },
    );
  });

  it('walks every switch of a channel once, there and back', () => {
    fc.assert(
      fc.property(traces, (channel) => {
        const walked: number[] = [];
        for (let at = nextSwitch(channel, BAND, -1, 1); at !== null; at = nextSwitch(channel, BAND, at, 1))
          walked.push(at);
        expect(walked).toEqual([...new Set(allSwitches(channel))]);
      }),
    );
  });
});

describe('stretchFacts', () => {
  it('counts what the kernels count over the same stretch', () => {
    fc.assert(
      fc.property(traces, moments, moments, (channel, a, b) => {
        const [startS, endS] = [Math.min(a, b), Math.max(a, b)];
        const series = seriesOf(channel, startS, endS);
        const facts = stretchFacts(channel, startS, endS);
        if (series.values.length === 0) {
          expect(facts).toBeNull();
          return;
        }
        const sum = series.values.reduce((total, value) => total + value, 0);
        expect(facts).toEqual({
          values: series.values.length,
          min: Math.min(...series.values),
          max: Math.max(...series.values),
          mean: sum / series.values.length,
          switches: hysteresisCrossings(series, BAND).length,
        });
      }),
    );
  });

  it('counts no switches where nothing switches', () => {
    const rpm = channelOf('c0', [800, 2500], { role: 'rpm', bank: null, unit: '1/min' });
    expect(stretchFacts(rpm, 0, 9)).toMatchObject({ values: 2, switches: null });
  });
});
