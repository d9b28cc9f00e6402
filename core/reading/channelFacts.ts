import type { ChannelFacts } from '../capture/channel.ts';
import { sampleCount, type TimeBase, timeAt } from '../capture/timeBase.ts';

/** Intervals looked at for rate and jitter: all of a short channel, a spread of a long one. */
const MOST_INTERVALS = 65_536;

/**
 * Facts of a channel from its samples. `decimals` is the number of digits after the decimal sign the file writes, by
 * which differences are freed of rounding noise; -1 where it is not known.
 */
export function channelFacts(values: Float32Array | Float64Array, time: TimeBase, decimals: number): ChannelFacts {
  const { finite, min, max, resolution, runs } = walk(values, decimals);
  const { medianS, jitterS } = intervals(time);
  const medianRateHz = medianS > 0 ? 1 / medianS : 0;
  const held = min === max ? 0 : holdLength(runs);
  // A 4-byte 0.94 is 0.9399999976158142 as a number; people and reports are shown what the instrument wrote.
  const clean = (value: number): number => (values instanceof Float32Array ? Number(value.toPrecision(7)) : value);
  return {
    finite,
    min: finite > 0 ? clean(min) : 0,
    max: finite > 0 ? clean(max) : 0,
    medianRateHz,
    jitterS,
    renewalRateHz: held === 0 ? 0 : medianRateHz / held,
    resolution: Number(clean(resolution).toPrecision(6)),
  };
}

/** Lengths of runs of equal values: how many runs had 1, 2, ... samples; the last counts all longer ones. */
interface Runs {
  readonly counts: Uint32Array;
  /** Runs that began with a step of exactly the smallest size. */
  smallSteps: number;
  total: number;
}

const LONGEST_RUN = 1024;

function walk(values: Float32Array | Float64Array, decimals: number) {
  const power = decimals >= 0 ? 10 ** Math.min(15, decimals) : 0;
  const counts = new Uint32Array(LONGEST_RUN + 1);
  let finite = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  let smallest = Number.POSITIVE_INFINITY;
  let smallSteps = 0;
  let total = 0;
  let previous = Number.NaN;
  let run = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    finite++;
    run++;
    if (value === previous) continue;
    if (value < min) min = value;
    if (value > max) max = value;
    const step = Math.abs(value - previous);
    if (!Number.isNaN(step)) {
      // The first run may have begun before the capture did, so only runs between two changes are counted.
      if (total > 0) counts[Math.min(run - 1, LONGEST_RUN)] = (counts[Math.min(run - 1, LONGEST_RUN)] ?? 0) + 1;
      total++;
      if (step < smallest * 0.999) {
        smallest = step;
        smallSteps = 1;
      } else if (step <= smallest * 1.001) smallSteps++;
    }
    previous = value;
    run = 1;
  }
  const rounded = power > 0 ? Math.round(smallest * power) / power : smallest;
  const resolution = total === 0 ? 0 : rounded > 0 ? rounded : smallest;
  return { finite, min, max, resolution, runs: { counts, smallSteps, total } };
}

/**
 * Samples for which an instrument repeats a value until it has a new one: 1 where it never does. Judged by the short end
 * of the run lengths, because equal values in a row also come about by themselves. A channel that moves only by its
 * smallest step (coolant, one degree now and then) is slow and not held.
 */
function holdLength({ counts, smallSteps, total }: Runs): number {
  const runs = counts.reduce((sum, count) => sum + count, 0);
  if (runs < 8 || smallSteps > total * 0.8) return 1;
  const short = atShare(counts, runs, 0.1);
  return short < 2 ? 1 : atShare(counts, runs, 0.3);
}

function atShare(counts: Uint32Array, total: number, share: number): number {
  let seen = 0;
  for (let length = 1; length < counts.length; length++) {
    seen += counts[length] ?? 0;
    if (seen >= total * share) return length;
  }
  return counts.length;
}

function intervals(time: TimeBase): { medianS: number; jitterS: number } {
  const count = sampleCount(time) - 1;
  if (count < 1) return { medianS: 0, jitterS: 0 };
  if (time.kind === 'regular') return { medianS: time.stepS, jitterS: 0 };
  const stride = Math.max(1, Math.ceil(count / MOST_INTERVALS));
  const found = new Float64Array(Math.floor((count - 1) / stride) + 1);
  for (let k = 0; k < found.length; k++) {
    const i = k * stride;
    found[k] = Math.round((timeAt(time, i + 1) - timeAt(time, i)) * 1e9) / 1e9;
  }
  found.sort();
  const at = (share: number): number => found[Math.round((found.length - 1) * share)] ?? 0;
  return { medianS: at(0.5), jitterS: (at(0.95) - at(0.05)) / 2 };
}
