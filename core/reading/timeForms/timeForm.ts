/**
 * What a time means: 'elapsed' counts from a start of its own; 'clock' is a time of day in seconds, which may pass
 * midnight; 'date' is the start of a day and 'instant' a moment, both in seconds since 1970-01-01T00:00 of whatever
 * place or zone they were written for.
 */
export type TimeKind = 'elapsed' | 'clock' | 'date' | 'instant';

/** One way of writing time as text. Numbers without signs are not time forms; their unit says what they are. */
export interface TimeForm {
  readonly id: string;
  /** For the sentence about the layout: "clock times". */
  readonly words: string;
  readonly kind: TimeKind;
  /** An example of each variant with its value in seconds; everyTimeForm.test.ts reads them. */
  readonly examples: readonly (readonly [text: string, seconds: number])[];
  /** Seconds, or NaN where the text is not written in this form or names no possible time (2023-02-29, 25:00). */
  parse(text: string): number;
  /** The same from bytes where the time is written in the commonest way of this form, else NaN; same bits as parse. */
  quick?(bytes: Uint8Array, start: number, end: number): number;
  /** Zone as the text gives it: 'Z', '+05:30', or null where it gives none. */
  zone?(text: string): string | null;
}
