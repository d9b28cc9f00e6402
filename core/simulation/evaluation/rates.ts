/**
 * Area under the receiver operating characteristic: the chance that a positive case scores above a negative one, ties
 * counted half (the Mann-Whitney statistic over its largest value). NaN where either list is empty.
 * Source: J. A. Hanley, B. J. McNeil, Radiology 143 (1982) 29.
 */
export function rocArea(positives: readonly number[], negatives: readonly number[]): number {
  const all = [
    ...positives.map((score) => ({ score, positive: true })),
    ...negatives.map((score) => ({ score, positive: false })),
  ].sort((a, b) => a.score - b.score);
  let rankSum = 0;
  let i = 0;
  while (i < all.length) {
    let end = i;
    while (end < all.length && all[end]?.score === all[i]?.score) end++;
    const rank = (i + 1 + end) / 2;
    for (let k = i; k < end; k++) if (all[k]?.positive) rankSum += rank;
    i = end;
  }
  const p = positives.length;
  const n = negatives.length;
  return (rankSum - (p * (p + 1)) / 2) / (p * n);
}

/** A probability and what came true. */
export interface Forecast {
  readonly probability: number;
  readonly happened: boolean;
}

/** Mean square of probability minus outcome. Source: G. W. Brier, Monthly Weather Review 78 (1950) 1. */
export function brierScore(forecasts: readonly Forecast[]): number {
  const sum = forecasts.reduce(
    (total, { probability, happened }) => total + (probability - (happened ? 1 : 0)) ** 2,
    0,
  );
  return sum / forecasts.length;
}

/**
 * Expected calibration error over ten bins of equal width: mean distance between the mean probability and the share
 * that came true, weighted by the cases in each bin.
 * Source: M. P. Naeini, G. F. Cooper, M. Hauskrecht, AAAI 2015, 2901.
 */
export function calibrationError(forecasts: readonly Forecast[]): number {
  const bins = Array.from({ length: 10 }, () => ({ sum: 0, happened: 0, count: 0 }));
  for (const { probability, happened } of forecasts) {
    const bin = bins[Math.min(9, Math.floor(probability * 10))];
    if (!bin) continue;
    bin.sum += probability;
    bin.happened += happened ? 1 : 0;
    bin.count++;
  }
  return bins.reduce((total, { sum, happened }) => total + Math.abs(sum - happened), 0) / forecasts.length;
}

/** Share of a list for which something holds; NaN for an empty list. */
export function shareOf<T>(list: readonly T[], holds: (item: T) => boolean): number {
  return list.length === 0 ? Number.NaN : list.filter(holds).length / list.length;
}
