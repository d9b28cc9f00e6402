// START HERE. The whole idea of the product on one page: channels become windows, windows become conditions and
// measures, these become findings, and findings with temperatures and codes become a verdict.

import type { Capture } from './capture/capture.ts';
import type { Bank } from './capture/roles.ts';
import { USUAL_COSTS } from './findings/costs.ts';
import type { CaptureScore } from './findings/finding.ts';
import { judgeAll } from './findings/judgeAll.ts';
import { judgeBanks } from './findings/judgeBanks.ts';
import { judgeForBanks } from './findings/scoreWindow.ts';
import { readThermal } from './thermal/readThermal.ts';
import type { ThermalPair } from './thermal/thermal.ts';
import { suggestWindows } from './windows/suggestWindows.ts';
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

/**
 * Scores one capture. Same capture, same request, same version: same numbers, on every machine. Never throws for any
 * capture: what cannot be judged is said to be so, with the reason.
 */
export function scoreCapture(capture: Capture, request: ScoreRequest): CaptureScore {
  // 1. Where to look: stretches in which the engine ran as a test wants it.
  const windows = request.windows ?? suggestWindows(capture);

  // 2. What each shows: conditions, measures, reasons and blockers, once for every bank.
  const judged = windows
    .flatMap((window) => judgeForBanks(capture, window, request.troubleCodes))
    .filter(({ score }) => request.bank === null || score.bank === null || score.bank === request.bank);

  // 3. What hands and thermometer add.
  const thermal = request.thermal.map(readThermal);

  // 4. What follows for each converter, and for the vehicle.
  const banks = judgeBanks({
    ...request,
    windows: judged,
    thermal,
    captures: [capture],
    rearSensor: 'unknown',
    costs: USUAL_COSTS,
    bricks: [],
    twin: [],
  });
  return { windows: judged.map(({ score }) => score), thermal, banks, verdict: judgeAll(banks) };
}
