/** How far one even trace runs behind another, and how alike they are at that shift. */
export interface Delay {
  /** Steps by which `later` lags `earlier`; fractions come from a parabola through the three points around the peak. */
  readonly steps: number;
  /** Normalised correlation there, -1 to 1. */
  readonly correlation: number;
}

/**
 * Lag of `later` behind `earlier` by the largest normalised cross-correlation, searched from `least` to `most` whole
 * steps (either may be negative), refined by a parabola: offset (a - c) / (2 (a - 2b + c)) (check 6.05).
 * Both arrays have the same length and even steps, with no missing values. Null where either is constant, where fewer
 * than 8 steps overlap, or where the largest value lies at an end of the search: then no peak has been seen. A periodic
 * trace has a peak in every period: the caller limits the search to half a period.
 */
export function crossCorrelationDelay(
  earlier: Float64Array,
  later: Float64Array,
  least: number,
  most: number,
): Delay | null {
  const found: number[] = [];
  for (let shift = least; shift <= most; shift++) found.push(correlationAt(earlier, later, shift));
  let best = 0;
  for (let k = 1; k < found.length; k++) if ((found[k] ?? Number.NaN) > (found[best] ?? Number.NaN)) best = k;
  const peak = found[best];
  if (peak === undefined || !Number.isFinite(peak) || best === 0 || best === found.length - 1) return null;
  return {
    steps: least + best + parabolaOffset(found[best - 1] ?? peak, peak, found[best + 1] ?? peak),
    correlation: peak,
  };
}

/** Offset of the top of the parabola through three even points, in steps from the middle one; 0 where there is no top. */
export function parabolaOffset(before: number, middle: number, after: number): number {
  const bend = before - 2 * middle + after;
  return bend < 0 ? (0.5 * (before - after)) / bend : 0;
}

/** Normalised correlation of earlier[i] with later[i + shift] over their overlap; NaN where it is too short or constant. */
export function correlationAt(earlier: Float64Array, later: Float64Array, shift: number): number {
  const first = Math.max(0, -shift);
  const end = Math.min(earlier.length, later.length - shift);
  const count = end - first;
  if (count < 8) return Number.NaN;
  let a = 0;
  let b = 0;
  for (let i = first; i < end; i++) {
    a += earlier[i] ?? 0;
    b += later[i + shift] ?? 0;
  }
  a /= count;
  b /= count;
  let ab = 0;
  let aa = 0;
  let bb = 0;
  for (let i = first; i < end; i++) {
    const da = (earlier[i] ?? 0) - a;
    const db = (later[i + shift] ?? 0) - b;
    ab += da * db;
    aa += da * da;
    bb += db * db;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : Number.NaN;
}
