import type { MeasurePair } from './comparison.ts';

/** The measures of a comparison parted into those that at least one window gives, and in one sentence those that neither does. */
export function partGiven(pairs: readonly MeasurePair[]): {
  readonly given: readonly MeasurePair[];
  /** "Neither window gives: oxygen storage; lag of the rear sensor." or null. */
  readonly neither: string | null;
} {
  const given = pairs.filter(({ first, second }) => first !== null || second !== null);
  const words = pairs.filter((pair) => !given.includes(pair)).map((pair) => pair.words);
  return { given, neither: words.length === 0 ? null : `Neither window gives: ${words.join('; ')}.` };
}
