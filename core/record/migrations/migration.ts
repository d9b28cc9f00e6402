/** One step: makes a record of version `to` out of one of version `to - 1`. Pure; leaves its argument alone. */
export interface Migration {
  readonly to: number;
  /** What changes, in a sentence, as in FORMAT.md. */
  readonly words: string;
  migrate(old: Readonly<Record<string, unknown>>): Record<string, unknown>;
}
