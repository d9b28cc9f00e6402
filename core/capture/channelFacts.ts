import type { ChannelFacts } from './channel.ts';
import { sampleCount, type TimeBase, timeAt } from './timeBase.ts';

/** Runs and steps are judged on at most this many samples, in one stretch from the middle of the capture. */
const LOOKED_AT = 32_768;
const LONGEST_RUN = 1024;

/** Count and range of the finite values, where the caller knows them already. */
export interface Range {
  readonly finite: number;
  readonly min: number;
  readonly max: number;
}

/**
 * Facts of a channel from its samples: finite count, range, median rate, jitter, renewal and resolution, as
 * channel.ts defines them. Works on any length; a channel without a finite value has all facts 0. 4-byte values are
 * shown as the decimal number they stand for: 0.94 and not 0.9399999976.
 */
export function channelFacts(
  time: TimeBase,
  values: Float32Array | Float64Array,
  range: Range = rangeOf(values),
): ChannelFacts {
  const { finite, min, max } = range;
  if (finite === 0) return { finite, min: 0, max: 0, medianRateHz: 0, jitterS: 0, renewalRateHz: 0, resolution: 0 };
  const { medianS, jitterS } = intervals(time);
  const medianRateHz = medianS > 0 ? 1 / medianS : 0;
  const narrow = values instanceof Float32Array;
  const clean = (value: number): number => (narrow ? Number(value.toPrecision(7)) : value);
  const steps = min === max ? NO_STEPS : stepsOf(values, narrow);
  return {
    finite,
    min: clean(min),
    max: clean(max),
    medianRateHz,
    jitterS,
    renewalRateHz: min === max ? 0 : medianRateHz / rowsHeld(steps),
    resolution: steps.smallest,
  };
}

/** Count and range of the finite values; infinities for none. */
export function rangeOf(values: Float32Array | Float64Array): Range {
  let finite = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    if (!Number.isFinite(value)) continue;
    finite++;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return { finite, min, max };
}

function intervals(time: TimeBase): { medianS: number; jitterS: number } {
  if (time.kind === 'regular') return { medianS: time.length > 1 ? time.stepS : 0, jitterS: 0 };
  const count = sampleCount(time) - 1;
  if (count < 1) return { medianS: 0, jitterS: 0 };
  const stride = Math.ceil(count / LOOKED_AT);
  const steps = new Float64Array(Math.floor((count - 1) / stride) + 1);
  for (let k = 0; k < steps.length; k++) {
    // Nanoseconds: finer than any clock of the trade, coarser than the rounding of a difference.
    steps[k] = Math.round((timeAt(time, k * stride + 1) - timeAt(time, k * stride)) * 1e9) / 1e9;
  }
  steps.sort();
  const at = (share: number): number => steps[Math.round((steps.length - 1) * share)] ?? 0;
  return { medianS: at(0.5), jitterS: (at(0.95) - at(0.05)) / 2 };
}

/** How a channel moves: its steps from one value to a different one. */
interface Steps {
  /** Smallest difference between two different values. */
  readonly smallest: number;
  /** Share of the steps that are as small as that. */
  readonly smallShare: number;
  /** How many runs of equal values had 1, 2, ... samples; the last counts all longer ones. */
  readonly runs: Uint32Array;
  readonly runCount: number;
}

const NO_STEPS: Steps = { smallest: 0, smallShare: 0, runs: new Uint32Array(0), runCount: 0 };

function stepsOf(values: Float32Array | Float64Array, narrow: boolean): Steps {
  const start = Math.max(0, (values.length - LOOKED_AT) >> 1);
  const found = walk(values, start, Math.min(values.length, start + LOOKED_AT), narrow);
  // The middle may stand still while the rest moves.
  return found.smallest > 0 || start === 0 ? found : walk(values, 0, values.length, narrow);
}

function walk(values: Float32Array | Float64Array, start: number, end: number, narrow: boolean): Steps {
  const runs = new Uint32Array(LONGEST_RUN + 1);
  const seen = new Set<number>();
  let steps = 0;
  let runCount = 0;
  let run = 0;
  let before = Number.NaN;
  for (let i = start; i < end; i++) {
    const value = values[i] ?? Number.NaN;
    if (value === before) run++;
    if (value === before || !Number.isFinite(value)) continue;
    if (seen.size < 4096) seen.add(value);
    if (!Number.isNaN(before)) {
      // The first run may have begun before the stretch, so it does not count.
      if (steps > 0) {
        const length = Math.min(run, LONGEST_RUN);
        runs[length] = (runs[length] ?? 0) + 1;
        runCount++;
      }
      steps++;
    }
    before = value;
    run = 1;
  }
  const smallest = smallestStep(seen, narrow);
  const small = stepsUpTo(smallest * 1.01, values, start, end);
  return { smallest, smallShare: small / Math.max(1, steps), runs, runCount };
}

/** How many steps from one value to a different one are not larger than `most`. */
function stepsUpTo(most: number, values: Float32Array | Float64Array, start: number, end: number): number {
  let count = 0;
  let before = Number.NaN;
  for (let i = start; i < end; i++) {
    const value = values[i] ?? Number.NaN;
    if (value === before || !Number.isFinite(value)) continue;
    if (Math.abs(value - before) <= most) count++;
    before = value;
  }
  return count;
}

/** Differences far below the values' own rounding are no steps: two roundings of the same number. */
function smallestStep(seen: ReadonlySet<number>, narrow: boolean): number {
  const sorted = Float64Array.from(seen).sort();
  const rounding = narrow ? 2e-7 : 1e-9;
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < sorted.length; i++) {
    const step = (sorted[i] ?? 0) - (sorted[i - 1] ?? 0);
    if (step > rounding * Math.abs(sorted[i] ?? 0) && step < smallest) smallest = step;
  }
  if (!Number.isFinite(smallest)) return 0;
  // Freed of the rounding of the two numbers, as far as their size lets the step be known.
  const size = Math.max(Math.abs(sorted[0] ?? 0), Math.abs(sorted[sorted.length - 1] ?? 0));
  const digits = Math.floor(Math.log10(smallest / (size * (narrow ? 1.2e-7 : 2.3e-16))));
  return Number(smallest.toPrecision(Math.max(1, Math.min(narrow ? 6 : 12, digits))));
}

/**
 * Rows for which an instrument repeats a value until it has a new one: 1 where it never does. Judged by the short end of
 * the run lengths, because equal values in a row also come about by themselves. A channel that moves by its smallest
 * step only (coolant, one degree now and then) is slow, and not held.
 */
function rowsHeld({ runs, runCount, smallShare }: Steps): number {
  if (runCount < 8 || smallShare > 0.8) return 1;
  return atShare(runs, runCount * 0.1) < 2 ? 1 : atShare(runs, runCount * 0.3);
}

function atShare(runs: Uint32Array, wanted: number): number {
  let seen = 0;
  for (let length = 1; length < runs.length; length++) {
    seen += runs[length] ?? 0;
    if (seen >= wanted && seen > 0) return length;
  }
  return runs.length;
}
