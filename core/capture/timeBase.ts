import type { SampleIndex, Seconds } from '../units/quantities.ts';

/**
 * When the samples of a channel were taken, in seconds from the start of the capture, ascending. A regular base
 * is described, not stored: sample i lies at startS + i * stepS. Channels that were sampled together share one
 * base object.
 */
export type TimeBase =
  | { readonly kind: 'regular'; readonly startS: Seconds; readonly stepS: Seconds; readonly length: number }
  | { readonly kind: 'listed'; readonly timesS: Float64Array };

/** Number of samples on the base. */
export function sampleCount(base: TimeBase): number {
  return base.kind === 'regular' ? base.length : base.timesS.length;
}

/** Time of sample `index`, s. An index outside the base gives NaN. */
export function timeAt(base: TimeBase, index: SampleIndex): Seconds {
  if (index < 0 || index >= sampleCount(base)) return Number.NaN;
  return base.kind === 'regular' ? base.startS + index * base.stepS : (base.timesS[index] ?? Number.NaN);
}

/**
 * Index of the first sample at or after `timeS`: 0 to sampleCount(base), which is one past the end when every sample
 * lies before. NaN gives sampleCount(base).
 */
export function firstAtOrAfter(base: TimeBase, timeS: Seconds): SampleIndex {
  let low = 0;
  let high = sampleCount(base);
  if (base.kind === 'regular' && base.stepS > 0 && Number.isFinite(timeS)) {
    // A guess by division, then the same comparisons as the search, so that rounding cannot make the two differ.
    const guess = Math.min(high, Math.max(0, Math.ceil((timeS - base.startS) / base.stepS)));
    low = Math.max(0, guess - 2);
    high = Math.min(high, guess + 2);
  }
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (timeAt(base, middle) >= timeS) high = middle;
    else low = middle + 1;
  }
  return low;
}
