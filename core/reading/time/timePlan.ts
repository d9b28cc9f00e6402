import type { TimeForm } from '../timeForms/timeForm.ts';

/** Where the times of a file come from, and what its numbers mean. */
export type TimePlan =
  | {
      readonly kind: 'number';
      readonly column: number;
      /** A number n of the file is n * times / over seconds. */
      readonly times: number;
      readonly over: number;
      /** Counted since 1970-01-01T00:00Z, so that the start has a clock. */
      readonly epoch: boolean;
      readonly words: string;
      /** Why the unit was guessed, or null where the file names it. */
      readonly guess: string | null;
    }
  | {
      readonly kind: 'text';
      readonly column: number;
      readonly form: TimeForm;
      /** Column of milliseconds to be added, or null. */
      readonly fraction: number | null;
      readonly words: string;
    }
  | {
      readonly kind: 'dateAndClock';
      readonly dateColumn: number;
      readonly column: number;
      readonly form: TimeForm;
      readonly dateForm: TimeForm;
      readonly words: string;
    }
  | {
      readonly kind: 'rate';
      readonly rateHz: number;
      /** 'told' by the file or the person; 'assumed' where nobody did. */
      readonly from: 'file' | 'person' | 'assumed';
      readonly words: string;
    };

/** The column a plan reads its times from, or null. */
export function timeColumnOf(plan: TimePlan): number | null {
  return plan.kind === 'rate' ? null : plan.column;
}
