import { type AsWritten, NOTHING_AS_WRITTEN } from '../../capture/repairs.ts';
import type { ColumnChoice } from '../../record/schema.ts';

/** The repairs that a person has undone for a capture with this header; none where the choice is for another one. */
export function asWrittenOf(choice: ColumnChoice | null, headerKey: string): AsWritten {
  if (choice?.headerKey !== headerKey || choice.asWritten === undefined) return NOTHING_AS_WRITTEN;
  return new Set(choice.asWritten);
}
