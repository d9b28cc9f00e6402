// The repairs that a person has undone, inside the choice that is kept for a capture.

import { REPAIR_IDS, type RepairId } from '../capture/repairs.ts';
import type { HeaderChoice } from './headerChoice.ts';
import type { ColumnChoice } from './schema.ts';

/**
 * The choice with exactly these repairs undone, each once and always in the same order. `choice` null stands for columns
 * that were recognised, and so does the result where nothing is left that a person chose.
 */
export function withAsWritten(
  choice: ColumnChoice | null,
  headerKey: string,
  repairs: readonly RepairId[],
): ColumnChoice | null {
  const header = choice === null ? { headerKey, timeColumn: null, rateHz: null, columns: [] } : headerChoiceOf(choice);
  const asWritten = REPAIR_IDS.filter((id) => repairs.includes(id));
  if (asWritten.length > 0) return { ...header, asWritten };
  return header.columns.length === 0 && header.timeColumn === null && header.rateHz === null ? null : header;
}

/** The choice without what holds for one capture alone: what may be kept for other files with the same header. */
export function headerChoiceOf({ headerKey, timeColumn, rateHz, columns }: ColumnChoice): HeaderChoice {
  return { headerKey, timeColumn, rateHz, columns };
}
