/**
 * Offset of the top of the parabola through three even points, in steps from the middle one:
 * (a - c) / (2 (a - 2b + c)) (check 6.05). 0 where there is no top.
 */
export function parabolaOffset(before: number, middle: number, after: number): number {
  const bend = before - 2 * middle + after;
  return bend < 0 ? (0.5 * (before - after)) / bend : 0;
}

/**
 * Normalised correlation, -1 to 1, of earlier[i] with later[i + shift] over their overlap (check 6.05). Both have even
 * steps and no missing values; `shift` is whole and may be negative. NaN where fewer than 8 steps overlap, or where
 * either is constant there.
 */
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
