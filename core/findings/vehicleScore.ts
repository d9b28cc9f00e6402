import type { CaptureRef } from '../record/schema.ts';
import type { ThermalReading } from '../thermal/thermal.ts';
import type { BankVerdict, Verdict, WindowScore } from './finding.ts';

/** The score of a window that a record keeps. */
export interface KeptWindowScore {
  readonly windowId: string;
  readonly captureId: string;
  readonly kind: CaptureRef['kind'];
  readonly score: WindowScore;
}

/** A reading that a record keeps, read. */
export interface KeptThermalReading {
  readonly readingId: string;
  readonly reading: ThermalReading;
}

/** Everything the core says about a vehicle. */
export interface VehicleScore {
  readonly windows: readonly KeptWindowScore[];
  readonly thermal: readonly KeptThermalReading[];
  /** As it was found: windows of 'before' and 'other' captures. */
  readonly before: { readonly verdict: Verdict; readonly banks: readonly BankVerdict[] };
  /** After the repair: windows of 'after' captures; null where there are none. */
  readonly after: { readonly verdict: Verdict; readonly banks: readonly BankVerdict[] } | null;
  /** The top line: "Converter of bank 1: does not store oxygen (97 %). Two windows, one thermal pair; no rule-out open." */
  readonly sentence: string;
}
