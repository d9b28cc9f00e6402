import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../../core/capture/channel.ts';
import { valuesWhere } from '../../../../core/capture/series.ts';
import { quantilesOf } from '../../../../core/statistics/quantile.ts';

function channelOf(values: Float32Array): Channel {
  return {
    id: 'c',
    name: 'c',
    role: 'downstreamO2',
    bank: 1,
    sensor: 2,
    unit: 'V',
    fileUnit: 'V',
    time: { kind: 'regular', startS: 0, stepS: 0.001, length: values.length },
    values,
    facts: {
      finite: values.length,
      min: 0,
      max: 1,
      medianRateHz: 1000,
      jitterS: 0,
      renewalRateHz: 1000,
      resolution: 0,
    },
  };
}

describe('values of a whole channel for its levels', () => {
  it('are all that hold, in order, up to 400,000 samples', () => {
    const kept = valuesWhere(channelOf(Float32Array.of(0.25, Number.NaN, 0.75, 0.5)), (value) => value > 0.3);
    expect([...kept]).toEqual([0.75, 0.5]);
  });

  it('of a longer one come from the whole of it, and give its quantiles', () => {
    // Every value from 0 to 1 once, in the order of a full-period generator: the share is the quantile itself.
    const count = 2 ** 21;
    const values = Float32Array.from({ length: count }, (_, i) => ((i * 1_664_525 + 1_013_904_223) % count) / count);
    const kept = valuesWhere(channelOf(values), Number.isFinite);
    expect(kept.length).toBeLessThanOrEqual(400_000);
    expect(kept.length).toBeGreaterThan(300_000);
    const shares = [0.005, 0.1, 0.5, 0.99];
    const misses = quantilesOf(kept, shares).map((value, i) => Math.abs(value - (shares[i] ?? 0)));
    expect(Math.max(...misses)).toBeLessThan(0.003);
  });
});
