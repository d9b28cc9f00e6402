import type { VehicleRecord } from '../schema.ts';

/**
 * One change of a record that a person can make and take back. `apply` is pure: it returns the next record and leaves
 * the one it got alone, and gives back the very same record where there is nothing to change, for instance because the
 * entry it is about is gone. Ids and times come from the caller.
 */
export interface Edit {
  /** In words, lower case, for the menu after "Undo: " and "Redo: ". */
  readonly name: string;
  readonly apply: (record: VehicleRecord) => VehicleRecord;
}
