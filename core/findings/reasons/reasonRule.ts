import type { Bank } from '../../capture/roles.ts';
import type { MeasureValue } from '../../measures/measure.ts';
import type { Share, Volts } from '../../units/quantities.ts';

/** What reasons are drawn from. */
export interface Evidence {
  readonly measures: ReadonlyMap<string, MeasureValue>;
  readonly troubleCodes: readonly string[];
  readonly bank: Bank;
  /** Swing of the rear sensor's fast part, or null without a rear sensor. */
  readonly rearFastSwingV: Volts | null;
  /** Share of the front swing that would come through if there were no converter. */
  readonly deadGain: Share;
  /** Whether the front sensor is a wideband one. */
  readonly wideband: boolean;
}

/** One kind of evidence: one file or one entry in this folder, one line in its index. */
export interface ReasonRule {
  readonly id: string;
  /**
   * Weight as a logarithm of odds for notStoring (negative speaks for storing), and the sentence; null where the
   * evidence is not there.
   */
  weigh(evidence: Evidence): { readonly weight: number; readonly detail: string } | null;
}

/** Value of a measure, or null. */
export function measureOf(evidence: Evidence, id: string): number | null {
  return evidence.measures.get(id)?.value ?? null;
}
