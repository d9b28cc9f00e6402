// Words for how sure a reader is, tied to numbers, so that "likely" means the same to everybody.

/**
 * Upper ends in per cent and their words: the scale of Intelligence Community Directive 203, "Analytic Standards"
 * (2 January 2015, part D.6.e.2.a), first row of its words. Its steps share their ends; here an end belongs to the step above it.
 */
const STEPS: readonly (readonly [below: number, words: string])[] = [
  [5, 'almost no chance'],
  [20, 'very unlikely'],
  [45, 'unlikely'],
  [55, 'roughly even chance'],
  [80, 'likely'],
  [95, 'very likely'],
];

/** Words for a confidence in per cent, 1 to 99: "very likely" for 85. What lies outside gets the words of the nearest step. */
export function confidenceWords(percent: number): string {
  return STEPS.find(([below]) => percent < below)?.[1] ?? 'almost certain';
}
