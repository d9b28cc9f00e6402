import type { Capture } from '../capture/capture.ts';
import type { Bank } from '../capture/roles.ts';
import { remember } from '../signal/remember.ts';
import { withKind } from '../windows/kindOf.ts';
import type { CaptureWindow } from '../windows/window.ts';
import type { DecisionCosts } from './costs.ts';
import { type JudgedWindow, judgeWindow } from './judgeWindow.ts';

/** How many judged windows of a capture are remembered, the last used ones: each holds a fitted model of some 200 kB. */
const MOST = 64;

const judgedOf = remember((_: Capture) => new Map<string, JudgedWindow>());

/**
 * As judgeWindow, and remembered for as long as the capture lives: a vehicle is judged anew with every mark and reading,
 * of which hardly any changes its other windows. `troubleCodes` in upper case.
 */
export function judgedWindow(
  capture: Capture,
  window: CaptureWindow,
  bank: Bank,
  troubleCodes: readonly string[],
  costs: DecisionCosts,
): JudgedWindow {
  const known = judgedOf(capture);
  const asked = JSON.stringify([window, bank, troubleCodes, costs]);
  const judged = known.get(asked) ?? judgeWindow(capture, withKind(capture, window), bank, troubleCodes, costs);
  known.delete(asked);
  known.set(asked, judged);
  const oldest = known.size > MOST ? known.keys().next() : null;
  if (oldest && !oldest.done) known.delete(oldest.value);
  return judged;
}
