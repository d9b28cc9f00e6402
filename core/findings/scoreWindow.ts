import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import { banksToJudge } from '../windows/banksToJudge.ts';
import type { CaptureWindow } from '../windows/window.ts';
import { type DecisionCosts, USUAL_COSTS } from './costs.ts';
import type { WindowScore } from './finding.ts';
import { judgedWindow } from './judgedWindow.ts';
import type { JudgedWindow } from './judgeWindow.ts';
import { knownCodes } from './knownCodes.ts';

/** Banks a window speaks of: its own, or all the capture has; an engine without sensors is judged as a whole. */
export function banksOfWindow(capture: Capture, window: CaptureWindow): Bank[] {
  const banks = banksToJudge(capture);
  if (window.bank !== null) return [window.bank];
  return banks.length > 0 ? banks : [null];
}

/** Judges a window once for each bank it speaks of. */
export function judgeForBanks(
  capture: Capture,
  window: CaptureWindow,
  troubleCodes: readonly string[],
  costs: DecisionCosts = USUAL_COSTS,
): [JudgedWindow, ...JudgedWindow[]] {
  const [first, ...others] = banksOfWindow(capture, window);
  const codes = knownCodes([capture], troubleCodes);
  return [
    judgedWindow(capture, window, first ?? null, codes, costs),
    ...others.map((bank) => judgedWindow(capture, window, bank, codes, costs)),
  ];
}

/** The score of a window, once for each bank it speaks of, ascending. */
export function scoreWindow(
  capture: Capture,
  window: CaptureWindow,
  troubleCodes: readonly string[],
): [WindowScore, ...WindowScore[]] {
  const [first, ...others] = judgeForBanks(capture, window, troubleCodes);
  return [first.score, ...others.map(({ score }) => score)];
}
