import type { Evidence } from '../evidence.ts';

/** What a reason looks at: a number that rises with what speaks for notStoring, and the sentence that tells it. */
export interface Feature {
  readonly value: number;
  readonly detail: string;
}

/** One kind of evidence: one file in this folder, one line in its index, one line of numbers in calibration.json. */
export interface ReasonRule {
  readonly id: string;
  /** Null where the evidence does not have it. */
  look(evidence: Evidence): Feature | null;
}
