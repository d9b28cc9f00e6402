/**
 * Independent values that a series of `count` values with lag-one correlation `lagOne` is worth: n (1 - r) / (1 + r) for
 * a first-order process (check 6.14). Negative correlation is not believed to make values worth more than they are.
 */
export function effectiveCount(count: number, lagOne: number): number {
  const r = Number.isFinite(lagOne) ? Math.min(0.9999, Math.max(0, lagOne)) : 0;
  return (count * (1 - r)) / (1 + r);
}
