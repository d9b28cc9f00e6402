import type { AsWritten } from '../../capture/repairs.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';

/** What the steps of mending share: which repairs not to make, how to name a row, and where to tell what was done. */
export interface Mending {
  readonly asWritten: AsWritten;
  /** Line of a row of the file, by its index; null where rows have no lines. */
  rowOf(index: number): number | null;
  readonly warnings: CaptureWarning[];
}
