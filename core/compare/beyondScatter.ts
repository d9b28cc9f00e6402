import type { MeasurePair } from './comparison.ts';

/**
 * Whether a measure differs by more than the scatter within both windows explains: 0 lies outside the 95 % interval, in
 * the digits in which the measure is told.
 */
export function beyondScatter({ interval, digits }: MeasurePair): boolean {
  if (interval === null) return false;
  const [low, high] = interval.map((end) => Number(end.toFixed(digits)));
  return (low ?? 0) > 0 || (high ?? 0) < 0;
}

/** What a table of pairs says of those, or null where no pair has an interval and so nothing can be said. */
export function scatterSentence(pairs: readonly MeasurePair[]): string | null {
  const told = pairs.filter(({ interval }) => interval !== null);
  if (told.length === 0) return null;
  const beyond = told.filter(beyondScatter).length;
  const measures = told.length === 1 ? 'measure' : 'measures';
  return `${beyond} of ${told.length} ${measures} with an interval ${beyond === 1 ? 'differs' : 'differ'} by more than the scatter within the windows (95 %); one in twenty does so by chance.`;
}
