/**
 * How many cases a person asked for, of a split of `whole`: a whole number from 1 on; all where nothing is said. Null for
 * anything else: a slip of the finger must not become a calibration of no cases.
 */
export function caseCount(typed: string | undefined, whole: number): number | null {
  if (typed === undefined) return whole;
  return /^[1-9]\d*$/.test(typed) && Number(typed) <= whole ? Number(typed) : null;
}
