import type { Finding } from '../../core/findings/finding.ts';
import type { Disagreement } from '../../core/record/opinionSchema.ts';

/** An opinion while it is thought over. Finding and confidence begin empty: nothing is suggested to the reader. */
export interface SignDraft {
  readonly vehicleId: string;
  readonly finding: Finding | null;
  /** Per cent, 1 to 99. */
  readonly confidence: number | null;
  readonly reasons: string;
  readonly nextTest: string;
  readonly answers: string | null;
  readonly disagreement: Disagreement | null;
  /** Windows of the record that it does not rest on; all others are ticked. */
  readonly without: readonly string[];
}

export function emptyDraft(vehicleId: string, answers: string | null): SignDraft {
  return {
    vehicleId,
    finding: null,
    confidence: null,
    reasons: '',
    nextTest: '',
    answers,
    disagreement: null,
    without: [],
  };
}

/** What is still missing before it can be signed, a sentence; null where nothing is. */
export function whatIsMissing(draft: SignDraft, name: string): string | null {
  if (draft.finding === null) return 'Choose your finding.';
  if (draft.confidence === null) return 'Type how sure you are, 1 to 99 per cent.';
  if (name.trim() === '') return 'Type your name: an opinion is signed by somebody.';
  return null;
}
