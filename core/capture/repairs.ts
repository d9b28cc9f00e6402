import type { CaptureWarning, WarningId } from './warnings.ts';

/** Repairs of a file's times that reading makes by itself and a person may undo, in the order in which they are made. */
export const REPAIR_IDS = [
  'clockPastMidnight',
  'secondRecording',
  'clockJumpedBack',
  'outOfOrder',
  'duplicateTimes',
] as const satisfies readonly WarningId[];

export type RepairId = (typeof REPAIR_IDS)[number];

/** Repairs that are not to be made: times stand as the file has them. */
export type AsWritten = ReadonlySet<RepairId>;

export const NOTHING_AS_WRITTEN: AsWritten = new Set();

/** Whether this is the name of a repair that can be undone. */
export function isRepairId(id: string): id is RepairId {
  return REPAIR_IDS.some((known) => known === id);
}

/**
 * The repair that a warning tells of, or null where it tells of none. Reading always tells of these: `made` where it made
 * the repair, else a person had undone it.
 */
export function repairOf({ id, repaired }: CaptureWarning): { readonly id: RepairId; readonly made: boolean } | null {
  return isRepairId(id) ? { id, made: repaired } : null;
}
