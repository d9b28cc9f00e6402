// START HERE. The whole idea of the product on one page: channels become windows, windows become conditions and
// measures, these become findings, and findings with temperatures and codes become a verdict.

import type { Capture } from './capture/capture.ts';
import type { Bank } from './capture/roles.ts';
import type { CaptureScore } from './findings/finding.ts';
import type { ThermalPair } from './thermal/thermal.ts';
import type { CaptureWindow } from './windows/window.ts';

/** What a capture is scored with, besides itself. */
export interface ScoreRequest {
  /** Windows to score; null scores the ones the core suggests. */
  readonly windows: readonly CaptureWindow[] | null;
  /** Only this bank; null for all. */
  readonly bank: Bank;
  readonly thermal: readonly ThermalPair[];
  /** Trouble codes found on the vehicle, upper case: "P0420". */
  readonly troubleCodes: readonly string[];
}

export function scoreCapture(_capture: Capture, _request: ScoreRequest): CaptureScore {
  throw new Error('not written yet');
}
