import type { ChannelFacts } from './channel.ts';
import { sampleCount, type TimeBase, timeAt } from './timeBase.ts';

/** Intervals and run lengths are judged on at most this many samples, spread as one stretch from the middle. */
const LOOKED_AT = 50_000;

/**
 * Facts of a channel from its samples: finite count, range, median rate, jitter, renewal and resolution, as
 * channel.ts defines them. Works on any length; a channel without a finite value has all facts 0.
 * Renewal: runs of equal values between two changes. An instrument that holds every value for k rows has runs of k
 * rows and more; one that does not has runs of one row among them. So the shortest tenth of the runs tells.
 */
export function channelFacts(time: TimeBase, values: Float32Array | Float64Array): ChannelFacts {
  let finite = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    finite++;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  if (finite === 0) return { finite, min: 0, max: 0, medianRateHz: 0, jitterS: 0, renewalRateHz: 0, resolution: 0 };
  const { medianS, jitterS } = intervals(time);
  const medianRateHz = medianS > 0 ? 1 / medianS : 0;
  const held = rowsHeld(values);
  return {
    finite,
    min,
    max,
    medianRateHz,
    jitterS,
    renewalRateHz: held === 0 ? 0 : medianRateHz / held,
    resolution: smallestStep(values),
  };
}

function lookedAt(length: number): readonly [number, number] {
  const start = Math.max(0, Math.floor((length - LOOKED_AT) / 2));
  return [start, Math.min(length, start + LOOKED_AT)];
}

function intervals(time: TimeBase): { medianS: number; jitterS: number } {
  if (time.kind === 'regular') return { medianS: time.length > 1 ? time.stepS : 0, jitterS: 0 };
  const [start, end] = lookedAt(sampleCount(time));
  const steps: number[] = [];
  for (let i = start + 1; i < end; i++) steps.push(timeAt(time, i) - timeAt(time, i - 1));
  if (steps.length === 0) return { medianS: 0, jitterS: 0 };
  const sorted = Float64Array.from(steps).sort();
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
  return { medianS: at(0.5), jitterS: (at(0.95) - at(0.05)) / 2 };
}

/** Rows for which a value is held at least; 0 where it never changes. */
function rowsHeld(values: Float32Array | Float64Array): number {
  const [start, end] = lookedAt(values.length);
  const runs: number[] = [];
  let since = -1;
  let before = Number.NaN;
  for (let i = start; i < end; i++) {
    const value = values[i] ?? Number.NaN;
    if (!Number.isFinite(value)) continue;
    if (Number.isFinite(before) && value !== before) {
      // The first run may have begun before the stretch, so it does not count.
      if (since >= 0) runs.push(i - since);
      since = i;
    }
    before = value;
  }
  if (runs.length === 0) return since >= 0 ? 1 : 0;
  runs.sort((a, b) => a - b);
  return runs[Math.floor(runs.length / 10)] ?? 1;
}

function smallestStep(values: Float32Array | Float64Array): number {
  const [start, end] = lookedAt(values.length);
  const seen = new Set<number>();
  for (let i = start; i < end && seen.size < 4096; i++) {
    const value = values[i] ?? Number.NaN;
    if (Number.isFinite(value)) seen.add(value);
  }
  const sorted = Float64Array.from(seen).sort();
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < sorted.length; i++) {
    const step = (sorted[i] ?? 0) - (sorted[i - 1] ?? 0);
    // Two roundings of the same step differ by a hair; that hair is no step.
    if (step > 1e-9 * Math.max(1, Math.abs(sorted[i] ?? 0)) && step < smallest) smallest = step;
  }
  return Number.isFinite(smallest) ? smallest : 0;
}
