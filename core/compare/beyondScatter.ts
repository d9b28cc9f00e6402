import type { MeasurePair } from './comparison.ts';

/** Whether a measure differs by more than the scatter within both windows explains: 0 lies outside the 95 % interval. */
export function beyondScatter({ interval }: MeasurePair): boolean {
  return interval !== null && (interval[0] > 0 || interval[1] < 0);
}

/** What a table of pairs says of those, or null where no pair has an interval and so nothing can be said. */
export function scatterSentence(pairs: readonly MeasurePair[]): string | null {
  const told = pairs.filter(({ interval }) => interval !== null);
  if (told.length === 0) return null;
  const beyond = told.filter(beyondScatter).length;
  return `${beyond} of the ${told.length} measures with an interval differ by more than the scatter within the windows (95 %); one in twenty does so by chance.`;
}
